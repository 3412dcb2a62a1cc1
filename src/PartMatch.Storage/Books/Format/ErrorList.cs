namespace PartMatch.Storage.Books.Format;

/// <summary>The faults found so far: all counted, the first of them kept.</summary>
internal sealed class ErrorList(int cap)
{
    private const int MaxShown = 120;

    private readonly List<(BookRow? Row, ImportError Error)> _kept = [];

    public int Total { get; private set; }

    public bool Any => Total > 0;

    /// <summary>With the row each is about; null when it is about a file.</summary>
    public IReadOnlyList<(BookRow? Row, ImportError Error)> Kept => _kept;

    /// <param name="suggest">Only asked while the list has room: looking for near codes takes time.</param>
    public void Add(BookRow row, string? column, string reason, Func<string?>? suggest = null)
    {
        Total++;
        if (_kept.Count < cap)
        {
            _kept.Add((row, new ImportError(row.Table.File, row.Line, column, column is null ? null : Shown(row[column]), reason, suggest?.Invoke())));
        }
    }

    /// <param name="suggestion">What to do, in words.</param>
    public void Add(BookRow row, string? column, string reason, string suggestion) => Add(row, column, reason, () => suggestion);

    /// <summary>A fault of a file, or of a row that could not be read.</summary>
    public void AddToFile(string file, int? line, string? column, string? value, string reason, string? suggestion)
    {
        Total++;
        if (_kept.Count < cap)
        {
            _kept.Add((null, new ImportError(file, line, column, value is null ? null : Shown(value), reason, suggestion)));
        }
    }

    public ImportOutcome.Refused ToRefused() => new(
        [.. _kept.Select(kept => kept.Error).OrderBy(error => error.File, StringComparer.Ordinal).ThenBy(error => error.Line ?? 0)], Total, Total > _kept.Count);

    private static string Shown(string value) => value.Length <= MaxShown ? value : value[..MaxShown] + "…";
}

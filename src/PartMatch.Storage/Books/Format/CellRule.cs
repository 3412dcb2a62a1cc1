namespace PartMatch.Storage.Books.Format;

/// <summary>What one cell may hold, whatever the rest of its row says. Empty cells are not shown to it.</summary>
/// <param name="Expected">In words, for the message.</param>
/// <param name="Mend">A cell that would be accepted and probably is meant, or null.</param>
/// <param name="IsList">A list by <c>|</c>, stored in ordinal order; <paramref name="Accepts"/> sees its items.</param>
internal sealed record CellRule(string Expected, Func<string, bool> Accepts, Func<string, string?>? Mend = null, bool IsList = false)
{
    /// <summary>The words of a closed vocabulary; empty where it is open.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>The same rule for a list of such cells.</summary>
    public CellRule Listed() => this with { Expected = $"a list by | of: {Expected}", IsList = true };

    /// <summary>What is wrong with a cell, or null.</summary>
    public string? FindFault(string cell)
    {
        if (!IsList)
        {
            return Accepts(cell) ? null : $"expected {Expected}";
        }

        var items = cell.Split('|');
        return items.Any(item => !Accepts(item)) ? $"expected {Expected}"
            : items.Distinct(StringComparer.Ordinal).Count() < items.Length ? "an item stands twice in the list"
            : null;
    }

    /// <summary>A cell that this rule accepts, made from one that it does not; or null.</summary>
    public string? FindMend(string cell)
    {
        var items = IsList ? cell.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) : [cell.Trim()];
        var mended = items.Select(item => Accepts(item) ? item : Mend?.Invoke(item)).Distinct(StringComparer.Ordinal).ToList();
        return mended.Count > 0 && mended.TrueForAll(item => item is not null && Accepts(item)) ? string.Join('|', mended) : null;
    }
}

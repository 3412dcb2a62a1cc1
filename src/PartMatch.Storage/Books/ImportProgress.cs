namespace PartMatch.Storage.Books;

/// <summary>What an import is at. Every stage goes over the rows once.</summary>
public enum ImportStage
{
    Reading,
    CheckingCells,
    CheckingReferences,
    CheckingMeaning,
    Storing,
    Recording,

    /// <summary>Nothing can stop it any more.</summary>
    Finishing,
}

/// <summary>How far an import has come.</summary>
/// <param name="Rows">Of this stage, so far.</param>
/// <param name="Total">Of all files; while they are read, their lines, which may be more.</param>
public sealed record ImportProgress(ImportStage Stage, int Rows, int Total);

/// <summary>Looks up from the rows now and then: tells how far the import is, and ends it when nobody wants it any more.</summary>
internal sealed class ImportWatch(Action<ImportProgress>? tell, CancellationToken cancellation)
{
    private const int RowsPerLook = 2_000;

    private ImportStage _stage;
    private int _rows;
    private int _total;

    public static ImportWatch Silent(CancellationToken cancellation) => new(null, cancellation);

    /// <exception cref="OperationCanceledException">Nobody wants it any more.</exception>
    public void Begin(ImportStage stage, int total)
    {
        (_stage, _rows, _total) = (stage, 0, total);
        Look();
    }

    /// <summary>One more row is done.</summary>
    /// <exception cref="OperationCanceledException">Nobody wants it any more.</exception>
    public void Row()
    {
        if (++_rows % RowsPerLook == 0)
        {
            Look();
        }
    }

    public void Look()
    {
        cancellation.ThrowIfCancellationRequested();
        tell?.Invoke(new ImportProgress(_stage, _rows, _total));
    }
}

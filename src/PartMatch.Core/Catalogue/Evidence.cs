namespace PartMatch.Core.Catalogue;

/// <summary>A dated, graded source.</summary>
/// <param name="Code">Its code inside its book, for example <c>ev-0003</c>.</param>
/// <param name="DerivedFrom">The evidence it was copied from, so that a copy counts once.</param>
/// <param name="RetractedOn">Set when it no longer counts; it stays visible.</param>
public sealed record Evidence(
    string Code, EvidenceGrade Grade, string? Date, string? Author, string? Source, string? DerivedFrom, string? RetractedOn, string? RetractedWhy)
{
    public bool IsRetracted => RetractedOn is not null;

    public bool IsCopy => DerivedFrom is not null;

    /// <summary>
    /// What it all goes back to, the same for an original and all its copies, which count once. Codes repeat between books, so the base names it with
    /// its book.
    /// </summary>
    public string Root { get; init; } = Code;

    /// <summary>What more is recorded of it; null where nothing is.</summary>
    public SourceDetails? Details { get; init; }
}

/// <summary>More about a piece of evidence: what it was read with, and how hard and how long the engine ran.</summary>
/// <param name="SpeaksOf">The number, or one example of it; null when not recorded.</param>
/// <param name="Hours">Under load.</param>
/// <param name="Output">Power while it ran.</param>
/// <param name="Fuel">In words.</param>
/// <param name="Page">Page of the document, or what the link leads to, in words.</param>
public sealed record SourceDetails(SpeaksOf? SpeaksOf, string? Instrument, decimal? Hours, Reading? Output, string? Fuel, string? Page, string? Note);

namespace PartMatch.Core.Catalogue;

/// <summary>A dated, graded source.</summary>
/// <param name="Code">Its code inside its book, for example <c>ev-0003</c>.</param>
/// <param name="DerivedFrom">The evidence it was copied from, so that a copy counts once.</param>
/// <param name="RetractedOn">Set when it no longer counts; it stays visible.</param>
public sealed record Evidence(
    string Code, EvidenceGrade Grade, string? Date, string? Author, string? Source, string? DerivedFrom, string? RetractedOn, string? RetractedWhy)
{
    public bool IsRetracted => RetractedOn is not null;

    /// <summary>The evidence it all goes back to; its own code when it is no copy. Copies of one root count once.</summary>
    public string Root { get; init; } = Code;
}

namespace PartMatch.Core.Catalogue;

/// <summary>A family in a list.</summary>
/// <param name="Maker">Code of the maker; null when not recorded.</param>
/// <param name="MakerName">Its name; null when not recorded.</param>
/// <param name="Variants">Codes, in ordinal order.</param>
/// <param name="Positions">How many positions it has.</param>
/// <param name="Parts">How many parts its own book describes.</param>
public sealed record FamilySummary(
    string Family, string Title, string? Maker, string? MakerName, string? Note, IReadOnlyList<string> Variants, int Positions, int Parts);

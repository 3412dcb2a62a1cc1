namespace PartMatch.Core.Catalogue;

/// <summary>A family in a list.</summary>
/// <param name="Maker">Code of the maker; null when not recorded.</param>
/// <param name="MakerName">Its name; null when not recorded.</param>
/// <param name="Variants">Codes, in ordinal order.</param>
/// <param name="Positions">How many positions it has.</param>
/// <param name="Parts">How many parts its own book describes.</param>
public sealed record FamilySummary(
    string Family, string Title, string? Maker, string? MakerName, string? Note, IReadOnlyList<string> Variants, int Positions, int Parts);

/// <summary>A number together with what a search for look-alikes shows of the part it stands on.</summary>
/// <param name="Kind">Kind of that part.</param>
/// <param name="Name">Name of that part.</param>
/// <param name="Families">Families in which that part is fitted somewhere, in ordinal order; empty when in none.</param>
public sealed record KnownNumber(PartNumber Number, string Kind, string Name, IReadOnlyList<string> Families);

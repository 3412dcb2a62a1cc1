namespace PartMatch.Core.Catalogue;

/// <summary>Everything the base holds about one part.</summary>
/// <param name="Book">The book that describes it.</param>
/// <param name="MakerName">Null when no book names the maker.</param>
/// <param name="Kind">Its kind, with the features that give its values their names.</param>
/// <param name="Numbers">Its own service number first, then the others in ordinal order of maker and number.</param>
/// <param name="Fitments">Ordered by family, variant, position and span.</param>
/// <param name="ReplacedBy">Supersessions that name it as the old part, ordered by new part.</param>
/// <param name="Replaces">Supersessions that name it as the new part, ordered by old part.</param>
/// <param name="Holds">What it holds, when it is a kit or an assembly; ordered by part.</param>
/// <param name="HeldIn">Kits and assemblies that hold it, ordered by set.</param>
public sealed record PartRecord(
    Part Part,
    string Book,
    string? MakerName,
    Kind Kind,
    IReadOnlyList<PartNumber> Numbers,
    IReadOnlyList<PartFitment> Fitments,
    IReadOnlyList<Supersession> ReplacedBy,
    IReadOnlyList<Supersession> Replaces,
    IReadOnlyList<ContentsRow> Holds,
    IReadOnlyList<ContentsRow> HeldIn);

/// <summary>A place where the maker fitted the part.</summary>
/// <param name="Family">The family of the variant.</param>
/// <param name="PositionName">Name of the position.</param>
public sealed record PartFitment(string Family, string PositionName, Fitment Fitment);

/// <summary>One row of what a kit or assembly holds.</summary>
/// <param name="Quantity">Pieces; null when not recorded.</param>
public sealed record ContentsRow(string Set, string Part, int? Quantity, Certainty Certainty, string? Note);

/// <summary>Is the part always in the set?</summary>
public enum Certainty
{
    NotRecorded,
    Certain,
    Possible,
}

/// <summary>A part in a list of search results.</summary>
public sealed record PartSummary(string Part, string Maker, string Number, string Kind, string Name);

/// <summary>One page of a search.</summary>
/// <param name="Parts">In the order of the search: see the store.</param>
/// <param name="Total">How many parts match in all.</param>
/// <param name="Cursor">Asks for the next page; null on the last one.</param>
public sealed record PartPage(IReadOnlyList<PartSummary> Parts, int Total, string? Cursor);

using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Builds;

/// <summary>Where what could be at a position comes from.</summary>
internal enum CandidateFrom
{
    /// <summary>The donor has it there.</summary>
    Donor,

    /// <summary>It is bought or in hand.</summary>
    Supply,

    /// <summary>It is declared: a service, or nothing at all.</summary>
    Declared,
}

/// <summary>What could be at a position.</summary>
/// <param name="Parts">One; several where one of them will be there and nobody knows yet which; the part that stands for nothing where it stays empty.</param>
/// <param name="IsGraded">Of several, one is chosen by measurement.</param>
/// <param name="Pieces">On the engine; null where that is not recorded.</param>
/// <param name="Reference">The variant it is judged against.</param>
/// <param name="IsUsersChoice">The user named it: its own features speak as chosen.</param>
/// <param name="CountedBy">By what of a mate its pieces go: it is one of several that differ in nothing else. Null where they do not.</param>
internal sealed record Candidate(
    string Position, CandidateFrom From, IReadOnlyList<Part> Parts, bool IsGraded, int? Pieces, string Reference, bool IsUsersChoice,
    PieceCounts? CountedBy = null)
{
    public bool IsNothing => Parts is [{ IsNothing: true }];

    public bool IsDonors => From == CandidateFrom.Donor;

    /// <summary>Names it among the candidates of its position, whatever the order of rows was.</summary>
    public string Key => $"{From}:{PartsKey}{(CountedBy is null ? "" : FormattableString.Invariant($"×{Pieces}"))}{(IsMeasuredCopy ? MeasuredAs : "")}";

    /// <summary>For the neighbours it does not matter where it came from.</summary>
    public string PartsKey { get; } = string.Join('|', Parts.Select(part => part.Id));

    /// <summary>The same part from the same place, in whatever number.</summary>
    public bool IsSameAs(Candidate other) => From == other.From && PartsKey == other.PartsKey;

    /// <summary>
    /// Examples that were measured: the donor's own, or what was bought. The readings of the first stand in the part; where there are more, the line holds only
    /// where it holds with each of them.
    /// </summary>
    public IReadOnlyList<Item> Examples { get; init; } = [];

    /// <summary>Bought, there, and measured.</summary>
    public bool IsMeasuredCopy => From == CandidateFrom.Supply && Examples.Count > 0;

    /// <summary>The bought pieces that those examples are of; what they do not suffice for is not measured.</summary>
    public IReadOnlyList<Orders.BoughtPieces> Measured { get; init; } = [];

    /// <summary>What the goal asks, where it stands in the place of a service; the line itself is not judged then, the others are judged by it.</summary>
    public string? Goal { get; init; }

    /// <summary>What the fit of this line and of its neighbours hangs on.</summary>
    public string FitKey => Goal is not null ? $"{PartsKey}@{Goal}" : PartsKey + MeasuredAs;

    private string MeasuredAs => Examples.Count == 0 ? "" : $"#{string.Join('+', Examples.Select(item => item.Address))}";
}

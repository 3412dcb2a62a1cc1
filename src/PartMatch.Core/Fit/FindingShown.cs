using PartMatch.Core.Catalogue;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Fit;

/// <summary>How a finding stands to the question asked. Only the first two count.</summary>
public enum FindingStanding
{
    /// <summary>About this engine.</summary>
    Counts,

    /// <summary>Counts one grade lower: another variant with the same fitted part there, or engines outside its span.</summary>
    Indirect,

    Retracted,

    /// <summary>Goes back to a source that counts already.</summary>
    Copy,

    /// <summary>Another variant, whose fitted part there is not known to be the same.</summary>
    OtherVariant,

    /// <summary>Made beside other neighbours than those that will really be there.</summary>
    OtherNeighbours,

    /// <summary>A source of this grade says nothing about this axis.</summary>
    SaysNothing,
}

/// <summary>One finding about the part asked about at this position, as it stands to the question.</summary>
/// <param name="Part">The part it is about; a question about another variant's part can be about several.</param>
/// <param name="Grade">Of its evidence.</param>
/// <param name="Rank">The rank it counts with, 1 best to 6; null when it does not count.</param>
/// <param name="CopyOf">For a copy: the finding that counts in its place.</param>
/// <param name="Text">Who says what, when, of which engine, and why it does not count where it does not.</param>
public sealed record FindingShown(
    string Code,
    string Part,
    string Variant,
    Axis Axis,
    FindingOutcome Outcome,
    EvidenceGrade Grade,
    int? Rank,
    FindingStanding Standing,
    string? CopyOf,
    string Text,
    SourceShown Evidence)
{
    /// <summary>What was seen, as whoever found it put it.</summary>
    public string? Note => Finding.Note;

    internal Finding Finding { get; init; } = null!; // set by FindingStatements, which makes every one

    /// <summary>Each once over answers of which any can be the true one: of those in which it counts, as it stands where it counts least.</summary>
    internal static IReadOnlyList<FindingShown> Over(IEnumerable<FitAnswer> answers) =>
    [
        .. answers.SelectMany(answer => answer.Findings).GroupBy(found => found.Code, StringComparer.Ordinal)
            .Select(group => group.OrderByDescending(found => found.Rank).First()) // null comes last
            .OrderBy(found => found.Code, StringComparer.Ordinal),
    ];
}

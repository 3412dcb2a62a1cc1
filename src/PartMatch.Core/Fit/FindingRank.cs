using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>The rank with which a finding speaks, 1 best to 6.</summary>
internal static class FindingRank
{
    /// <summary>Null where its source says nothing about the axis, or its outcome is none of the axis.</summary>
    /// <remarks>
    /// An engine that ran under load had the part mounted, so on <i>mounts</i> it counts like a trial fit; ours, no source.
    /// A trial fit says nothing about running.
    /// </remarks>
    public static int? Of(Finding finding) => (finding.Axis, finding.Outcome, finding.Evidence.Grade) switch
    {
        (Axis.Mounts, FindingOutcome.Same or FindingOutcome.Differently, _) or (Axis.Runs, not (FindingOutcome.Same or FindingOutcome.Differently), _) => null,
        (Axis.Mounts, _, EvidenceGrade.TrialFitted or EvidenceGrade.RanUnderLoad) => 1,
        (Axis.Mounts, _, EvidenceGrade.Measured) => 2,
        (Axis.Runs, _, EvidenceGrade.RanUnderLoad) => 1,
        (Axis.Runs, _, EvidenceGrade.TrialFitted) => null,
        (Axis.Runs, _, EvidenceGrade.Measured) => 4,
        (_, _, EvidenceGrade.MakersDocument) => 3,
        (_, _, EvidenceGrade.Reported) => 5,
        _ => AxisDecision.UnprovenRank,
    };

    /// <summary>The rank of the next lower grade on that axis; below the lowest there is none.</summary>
    public static int OneGradeLower(Axis axis, int rank) => (axis, rank) switch
    {
        (Axis.Mounts, 1) => 2,
        (_, 1 or 2) => 3,
        (Axis.Runs, 3) => 4,
        (_, 3 or 4) => 5,
        _ => AxisDecision.UnprovenRank,
    };
}

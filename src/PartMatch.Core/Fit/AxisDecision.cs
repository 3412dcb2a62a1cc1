using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>One thing said about an axis.</summary>
/// <param name="Value">The single value it states.</param>
/// <param name="Rank">1 best to 6.</param>
internal sealed record Statement<T>(T Value, int Rank, IReadOnlyList<string> Reasons, string Text)
    where T : struct, Enum;

/// <summary>
/// Folds the relations of one axis into the values still possible, and combines statements by rank: the best rank decides, different
/// values inside it are disputed, a lower rank with another value is shown and lowers sureness one step.
/// </summary>
internal static class AxisDecision
{
    public const int OwnReadingRank = 1;
    public const int IdentityRank = 3;
    public const int DecidedByRecordsRank = 4;
    public const int UnprovenRank = 6;

    /// <summary>Every value of <i>mounts</i> still possible, best first.</summary>
    public static IReadOnlyList<Mounts> PossibleMounts(IReadOnlyList<Reason> reasons)
    {
        if (reasons.Any(reason => reason.By == ReasonBy.Kind && reason.Met == Met.No))
        {
            return [Mounts.No];
        }

        Reason[] relevant = [.. Relevant(reasons, Axis.Mounts)];

        // Nothing is vacuously true: companion rules alone do not show that a part goes on.
        if (!relevant.Any(reason => reason.By is ReasonBy.Feature or ReasonBy.Joint or ReasonBy.Stack))
        {
            return relevant.Any(reason => reason.Met == Met.No && reason.Effect == Effect.Stops) ? [Mounts.No]
                : relevant.Any(reason => reason.Met == Met.No) ? [Mounts.WithWork, Mounts.No]
                : [Mounts.Yes, Mounts.WithWork, Mounts.No];
        }

        return Fold(relevant.Select(reason => (reason.Met, reason.Effect == Effect.Work ? Mounts.WithWork : Mounts.No)), Mounts.Yes);
    }

    /// <summary>Every value of <i>runs</i> still possible, best first.</summary>
    public static IReadOnlyList<Runs> PossibleRuns(IReadOnlyList<Reason> reasons, bool canAlterRunning)
    {
        Reason[] relevant = [.. Relevant(reasons, Axis.Runs)];
        return relevant.All(reason => reason.By == ReasonBy.Companion && reason.Met != Met.No) && canAlterRunning
            ? [Runs.Same, Runs.Differently]
            : Fold(relevant.Select(reason => (reason.Met, Runs.Differently)), Runs.Same);
    }

    private static IEnumerable<Reason> Relevant(IReadOnlyList<Reason> reasons, Axis axis) =>
        reasons.Where(reason => reason.Axis == axis && reason.Effect is not null && reason.By is not (ReasonBy.Identity or ReasonBy.Finding or ReasonBy.Kind));

    /// <summary>Combines the statements on one axis.</summary>
    /// <param name="possible">What the computed reasoning leaves possible; shown when nothing is stated.</param>
    public static (AxisAnswer<T> Axis, IReadOnlyList<Disagreement> Disagreements) Combine<T>(
        Axis axis, IReadOnlyList<Statement<T>> statements, IReadOnlyList<T> possible, T notKnown)
        where T : struct, Enum
    {
        if (statements.Count == 0)
        {
            return (new AxisAnswer<T>(notKnown, possible, Disputed: false, [], null, Sureness.Unproven), []);
        }

        var rank = statements.Min(statement => statement.Rank);
        Statement<T>[] best = [.. statements.Where(statement => statement.Rank == rank)];
        T[] values = [.. best.Select(statement => statement.Value).Distinct().Order()];
        var decidedBy = best.SelectMany(statement => statement.Reasons).Distinct().ToArray();
        if (values.Length > 1)
        {
            return (new AxisAnswer<T>(notKnown, values, Disputed: true, decidedBy, rank, Sureness.Unproven), []);
        }

        Disagreement[] disagreements =
        [
            .. statements.Where(statement => statement.Rank > rank && !statement.Value.Equals(values[0]))
                .OrderBy(statement => statement.Rank)
                .Select(statement => new Disagreement(axis, Codes.Of(statement.Value), statement.Rank, statement.Reasons, statement.Text)),
        ];
        var sureness = disagreements.Length > 0 ? OneStepDown(SurenessOf(rank)) : SurenessOf(rank);
        return (new AxisAnswer<T>(values[0], values, Disputed: false, decidedBy, rank, sureness), disagreements);
    }

    public static Headline HeadlineOf(Mounts mounts, Runs runs) => (mounts, runs) switch
    {
        (Mounts.No, _) => Headline.DoesNotFit,
        (Mounts.NotKnown, _) or (_, Runs.NotKnown) => Headline.NotKnownYet,
        (_, Runs.Differently) => Headline.MountsButRunsDifferently,
        (Mounts.WithWork, _) => Headline.FitsWithWork,
        _ => Headline.Fits,
    };

    /// <summary>A headline has the lower sureness of its axes; "does not fit" has that of mounts.</summary>
    public static Sureness SurenessOf(Headline headline, Sureness mounts, Sureness runs) =>
        headline == Headline.DoesNotFit || mounts < runs ? mounts : runs;

    private static Sureness SurenessOf(int rank) => rank switch
    {
        1 or 2 => Sureness.Proven,
        3 => Sureness.Documented,
        4 or 5 => Sureness.Indicated,
        _ => Sureness.Unproven,
    };

    private static Sureness OneStepDown(Sureness sureness) => sureness == Sureness.Unproven ? sureness : sureness - 1;

    /// <summary>The worst of one value from each relation, over every combination: enumerations are declared best first.</summary>
    private static IReadOnlyList<T> Fold<T>(IEnumerable<(Met Met, T WhenUnmet)> relations, T best)
        where T : struct, Enum
    {
        T[] possible = [best];
        foreach (var (met, whenUnmet) in relations)
        {
            T[] each = met switch
            {
                Met.Yes => [best],
                Met.No => [whenUnmet],
                _ => [best, whenUnmet],
            };
            possible = [.. possible.SelectMany(_ => each, Worse).Distinct().Order()];
        }

        return possible;
    }

    private static T Worse<T>(T left, T right)
        where T : struct, Enum => Comparer<T>.Default.Compare(left, right) >= 0 ? left : right;
}

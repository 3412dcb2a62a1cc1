using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>For each relation that keeps an axis open: the cheapest check, on the part or on the engine, that can decide it.</summary>
internal static class MeasureNextAdvice
{
    private sealed record Missing(string Feature, Kind Kind, string On, string? Position, Reason Reason);

    /// <summary>Ordered by minutes, then stops, alters, work.</summary>
    public static IReadOnlyList<MeasureNext> For(FamilyFacts facts, Kind kind, IReadOnlyList<Reason> reasons, bool mountsOpen, bool runsOpen) =>
    [
        .. reasons.Where(reason => reason.Met == Met.NotKnown && reason.Effect is not null && (reason.Axis == Axis.Mounts ? mountsOpen : runsOpen))
            .SelectMany(reason => WhatIsMissing(facts, kind, reason))
            .Select(missing => (missing, check: Cheapest(missing)))
            .Where(found => found.check is not null)
            .DistinctBy(found => (found.missing.Feature, found.missing.On, found.missing.Position, found.missing.Reason.Axis))
            .OrderBy(found => found.check!.Minutes) // filtered just above
            .ThenBy(found => found.missing.Reason.Effect switch { Effect.Stops => 0, Effect.Alters => 1, _ => 2 })
            .ThenBy(found => found.missing.Feature, StringComparer.Ordinal)
            .Select(found => new MeasureNext(
                found.missing.Feature, found.missing.Kind.FindFeature(found.missing.Feature)?.Name ?? found.missing.Feature, found.missing.On, found.missing.Position,
                found.check!.Method, found.check.Minutes, found.missing.Reason.Axis, found.check.How)),
    ];

    /// <summary>Both sides are offered when both are open; a side that is recorded well enough is not measured again.</summary>
    private static IEnumerable<Missing> WhatIsMissing(FamilyFacts facts, Kind kind, Reason reason)
    {
        var partOpen = IsOpen(reason.Part);
        var neighbour = NeighbourOf(facts, reason);
        var otherOpen = neighbour is null ? IsOpen(reason.Need) : reason.By == ReasonBy.Stack || IsOpen(reason.Need);
        if (reason.Feature is { } feature && (partOpen || !otherOpen || reason.By == ReasonBy.Stack))
        {
            yield return new Missing(feature, kind, "part", null, reason);
        }

        if (otherOpen && neighbour is { } at && facts.FindPosition(at.Position) is { } position && facts.FindKind(position.Kind) is { } other)
        {
            yield return new Missing(at.Feature, other, "engine", at.Position, reason);
        }
        else if (otherOpen && reason.By == ReasonBy.Feature && reason.Feature is { } own)
        {
            yield return new Missing(own, kind, "engine", null, reason);
        }
    }

    private static bool IsOpen(ComparedValue? value) =>
        value is null || value.Text == "not recorded" || value.Text.StartsWith("disputed", StringComparison.Ordinal);

    private static FeatureAt? NeighbourOf(FamilyFacts facts, Reason reason) =>
        reason.By == ReasonBy.Joint && facts.Joints.FirstOrDefault(joint => joint.Code == reason.Code) is { } joint
            ? (joint.Left.Feature == reason.Feature && joint.Left != joint.Right ? joint.Right : joint.Left)
            : null;

    /// <summary>A reading ± its uncertainty must be able to lie inside the band accepted; a check of unknown uncertainty is taken last.</summary>
    private static Check? Cheapest(Missing missing)
    {
        var room = Room(missing.Reason);
        return missing.Kind.Checks
            .Where(check => check.Feature == missing.Feature && (room is null || check.Uncertainty is null || 2 * check.Uncertainty <= room))
            .OrderBy(check => room is not null && check.Uncertainty is null)
            .ThenBy(check => check.Minutes).ThenBy(check => check.Method)
            .FirstOrDefault();
    }

    private static decimal? Room(Reason reason)
    {
        var band = reason.Band ?? reason.Need;
        return band is { Low: { } low, High: { } high } ? high - low + (2 * (reason.Allowance?.Low ?? 0)) : null;
    }
}

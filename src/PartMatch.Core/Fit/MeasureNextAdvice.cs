using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>For each relation that keeps an axis open: the cheapest check, on the part or on the engine, that can decide it.</summary>
internal static class MeasureNextAdvice
{
    private sealed record Missing(string Feature, Kind Kind, string On, string? Position, Reason Reason);

    /// <summary>Ordered by minutes, then stops, alters, work.</summary>
    public static IReadOnlyList<MeasureNext> For(FamilyFacts facts, Kind kind, IReadOnlyList<Reason> reasons, bool mountsOpen, bool runsOpen) =>
    [
        .. reasons.Where(reason => KeepsOpen(reason, reasons) && (reason.Axis == Axis.Mounts ? mountsOpen : runsOpen))
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

    /// <summary>Once one work is needed anyway, another that may be needed no longer changes what the axis could be.</summary>
    internal static bool KeepsOpen(Reason reason, IReadOnlyList<Reason> reasons) =>
        reason.Met == Met.NotKnown && reason.Effect is { } effect
        && !(effect == Effect.Work && reasons.Any(other => other.Met == Met.No && other.Effect == Effect.Work));

    /// <summary>What is open on either side; where both are recorded and it is too close to call, the part.</summary>
    private static IEnumerable<Missing> WhatIsMissing(FamilyFacts facts, Kind kind, Reason reason)
    {
        if (reason.By == ReasonBy.Stack)
        {
            return MissingTerms(facts, kind, reason);
        }

        var onPart = new Missing(reason.Feature ?? "", kind, "part", null, reason);
        var onEngine = NeighbourOf(facts, reason) is { } at
            ? facts.FindPosition(at.Position) is { } position && facts.FindKind(position.Kind) is { } other ? new Missing(at.Feature, other, "engine", at.Position, reason) : null
            : reason.By == ReasonBy.Feature ? onPart with { On = "engine" } : null;
        return (IsOpen(reason.Part), IsOpen(reason.Need), onEngine) switch
        {
            (true, true, { } engine) => [onPart, engine],
            (false, true, { } engine) => [engine],
            _ => [onPart],
        };
    }

    private static IEnumerable<Missing> MissingTerms(FamilyFacts facts, Kind kind, Reason reason)
    {
        if (facts.Stacks.FirstOrDefault(stack => stack.Code == reason.Code) is not { } stack || reason.Terms is not { } shown)
        {
            return [];
        }

        Missing[] open =
        [
            .. stack.Terms.Zip(shown).Where(pair => pair.Second.IsOpen).Select(pair => pair.First).OfType<FeatureTerm>()
                .Select(term => Of(facts, kind, reason, term.At)).OfType<Missing>(),
        ];
        return open.Length > 0 ? open : [new Missing(reason.Feature ?? "", kind, "part", null, reason)];
    }

    private static Missing? Of(FamilyFacts facts, Kind kind, Reason reason, FeatureAt at) =>
        at == reason.At ? new Missing(at.Feature, kind, "part", null, reason)
        : facts.FindPosition(at.Position) is { } position && facts.FindKind(position.Kind) is { } other ? new Missing(at.Feature, other, "engine", at.Position, reason)
        : null;

    private static bool IsOpen(ComparedValue? value) => value is null || value.IsOpen;

    private static FeatureAt? NeighbourOf(FamilyFacts facts, Reason reason) =>
        reason.By == ReasonBy.Joint && facts.Joints.FirstOrDefault(joint => joint.Code == reason.Code) is { } joint
            ? (joint.Left == reason.At ? joint.Right : joint.Left)
            : null;

    /// <summary>A reading ± its uncertainty must be able to lie inside what is surely accepted; a check of unknown uncertainty is taken last.</summary>
    private static Check? Cheapest(Missing missing)
    {
        var room = missing.Reason.Room;
        return missing.Kind.Checks
            .Where(check => check.Feature == missing.Feature && (room is null || check.Uncertainty is null || 2 * check.Uncertainty <= room))
            .OrderBy(check => room is not null && check.Uncertainty is null)
            .ThenBy(check => check.Minutes).ThenBy(check => check.Method)
            .FirstOrDefault();
    }
}

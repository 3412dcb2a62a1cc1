using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Something that has to be recorded, or settled, before a relation that is not known can be: a closed set.</summary>
internal abstract record Lack;

/// <summary>The value of a feature of a part: not recorded, or disputed.</summary>
internal sealed record LacksValue(string Part, string Feature) : Lack;

/// <summary>What sits at a position of a variant.</summary>
internal sealed record LacksFitment(string Variant, string Position) : Lack;

/// <summary>Anything that no single record would settle: too close to call, several neighbours that differ, no rule at all.</summary>
internal sealed record LacksMore : Lack
{
    public static LacksMore Instance { get; } = new();
}

/// <summary>What a relation that is not known lacks.</summary>
internal static class Lacks
{
    /// <param name="variant">The variant that the question is about.</param>
    /// <param name="position">The position that it is about.</param>
    /// <returns>At least one.</returns>
    public static IReadOnlyList<Lack> Of(FamilyFacts facts, string variant, string position, Reason reason)
    {
        Lack[] found =
        [
            .. reason.By switch
            {
                ReasonBy.Stack => OfStack(facts, variant, reason),
                ReasonBy.Joint => OfPart(facts, reason).Concat(OfNeighbour(facts, variant, reason)),
                ReasonBy.Feature => OfPart(facts, reason).Concat(OfDemand(facts, variant, position, reason)),
                _ => OfPart(facts, reason),
            },
        ];
        return found.Length > 0 ? found : [LacksMore.Instance];
    }

    private static IEnumerable<Lack> OfPart(FamilyFacts facts, Reason reason) =>
        reason.Part is { IsOpen: true } own && reason.Feature is { } feature ? [Value(facts, own.Part, feature)] : [];

    private static IEnumerable<Lack> OfDemand(FamilyFacts facts, string variant, string position, Reason reason) => reason.Need switch
    {
        { IsOpen: true, Part: null, From: "fitted-part" } => [new LacksFitment(variant, position)],
        { IsOpen: true } need => [Value(facts, need.Part, reason.Feature ?? "")],
        _ => [],
    };

    private static IEnumerable<Lack> OfNeighbour(FamilyFacts facts, string variant, Reason reason)
    {
        if (reason.Need is not { IsOpen: true } need || facts.Joints.FirstOrDefault(joint => joint.Code == reason.Code) is not { } joint)
        {
            return [];
        }

        var other = joint.Left == reason.At ? joint.Right : joint.Left;
        if (need.Part is not null)
        {
            return [Value(facts, need.Part, other.Feature)];
        }

        // One of several that may be there: a value settles it only where no two of them are recorded and say different things.
        string[] parts = [.. facts.FitmentsAt(variant, other.Position).Select(fitment => fitment.Part).OfType<string>().Distinct(StringComparer.Ordinal)];
        string[] missing = [.. parts.Where(part => ValueSelection.Of(facts.GetPart(part), other.Feature) is not StatedValue)];
        return parts.Length == 0 ? [new LacksFitment(variant, other.Position)]
            : [.. missing.Select(part => Value(facts, part, other.Feature)), .. parts.Length - missing.Length > 1 ? [LacksMore.Instance] : Array.Empty<Lack>()];
    }

    private static IEnumerable<Lack> OfStack(FamilyFacts facts, string variant, Reason reason) =>
        facts.Stacks.FirstOrDefault(stack => stack.Code == reason.Code) is { } stack && reason.Terms is { } shown
            ? stack.Terms.Zip(shown).Where(pair => pair.Second.IsOpen && pair.First is FeatureTerm)
                .Select(pair => (((FeatureTerm)pair.First).At, pair.Second.Part)) // filtered just above
                .Select(term => term.Part is { } part ? Value(facts, part, term.At.Feature) : (Lack)new LacksFitment(variant, term.At.Position))
            : [];

    private static Lack Value(FamilyFacts facts, string? part, string feature) =>
        part is not null && facts.FindPart(part) is not null ? new LacksValue(part, feature) : LacksMore.Instance;
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Something that reads a feature of the part at a position.</summary>
/// <param name="By">In words.</param>
/// <param name="Row">Null for a rule of the kind, which may stand in any book that the family uses.</param>
/// <param name="Applies">Does it read it as the variant is built? A joint with a position that carries nothing does not.</param>
internal sealed record Reader(string Feature, string By, FaultRow? Row, bool Applies)
{
    /// <summary>Everything that reads a feature of what is fitted at that position of a variant.</summary>
    public static IEnumerable<Reader> At(FamilyFacts facts, string variant, string position)
    {
        var rows = new FaultRows(facts);
        var kind = facts.FindPosition(position) is { } at ? facts.FindKind(at.Kind) : null;
        return
        [
            .. (kind?.Rules ?? []).Select(rule => new Reader(rule.Feature, "a rule of the kind", null, Applies: true)),
            .. facts.Needs.Where(need => need.Variant == variant && need.Position == position && need.Evidence?.IsRetracted != true)
                .Select(need => new Reader(need.Feature, $"the need of {variant}", rows.Of(need), Applies: true)),
            .. facts.JointsAt(position).Where(joint => joint.HoldsFor(variant) && joint.Evidence?.IsRetracted != true)
                .SelectMany(joint => Of(facts, variant, position, [joint.Left, joint.Right], $"joint {joint.Code}", rows.Of(joint))),
            .. facts.StacksAt(position).Where(stack => stack.HoldsFor(variant) && stack.Evidence?.IsRetracted != true)
                .SelectMany(stack => Of(facts, variant, position, [.. PlacesOf(stack)], $"stack {stack.Code}", rows.Of(stack))),
            .. facts.Companions.Where(rule => rule.HoldsFor(variant) && rule.Evidence?.IsRetracted != true)
                .SelectMany(rule => Of(facts, variant, position, rule, rows.Of(rule))),
        ];
    }

    private static IEnumerable<FeatureAt> PlacesOf(Stack stack) => stack.Terms.OfType<FeatureTerm>().Select(term => term.At);

    private static IEnumerable<Reader> Of(FamilyFacts facts, string variant, string position, IReadOnlyList<FeatureAt> read, string by, FaultRow row)
    {
        var applies = read.Select(at => at.Position).Where(other => other != position).All(other => MayCarry(facts, variant, other, _ => true));
        return read.Where(at => at.Position == position).Select(at => new Reader(at.Feature, by, row, applies));
    }

    private static IEnumerable<Reader> Of(FamilyFacts facts, string variant, string position, Companion rule, FaultRow row)
    {
        var by = $"companion rule {rule.Code}";
        if (rule.When.At.Position == position)
        {
            yield return new Reader(rule.When.At.Feature, by, row, Applies: true);
        }

        if (rule.Then.At.Position == position)
        {
            bool MayHold(Part part) => CompanionFaults.Holds(part, rule.When) != Met.No;
            yield return new Reader(rule.Then.At.Feature, by, row, MayCarry(facts, variant, rule.When.At.Position, MayHold, orNothing: true));
        }
    }

    /// <summary>Is what sits there not recorded, or can it be such a part?</summary>
    private static bool MayCarry(FamilyFacts facts, string variant, string position, Func<Part, bool> such, bool orNothing = false)
    {
        Fitment[] fitted = [.. facts.FitmentsAt(variant, position)];
        return fitted.Length == 0 || fitted.Any(fitment => fitment.Part is { } part ? such(facts.GetPart(part)) : orNothing && such(Part.Nothing("")));
    }
}

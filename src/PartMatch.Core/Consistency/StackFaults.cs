using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Stacks that do not add up with what the maker fitted.</summary>
internal static class StackFaults
{
    private sealed record Broken(string Variant, string Position, Reason Reason, string Fit);

    public static IEnumerable<Fault> Find(FamilyFacts facts) => facts.Stacks.Where(stack => stack.Evidence?.IsRetracted != true)
        .SelectMany(stack => facts.Variants.Where(variant => stack.HoldsFor(variant.Code))
            .Select(variant => OnVariant(facts, variant, stack)).OfType<Broken>()
            .GroupBy(broken => broken.Reason.Text, StringComparer.Ordinal)
            .Select(group => Fault(facts, stack, [.. group])));

    /// <summary>The first part that adds up with nothing that may be beside it on some engines; null where every one adds up with something.</summary>
    private static Broken? OnVariant(FamilyFacts facts, Variant variant, Stack stack)
    {
        string[] positions = [.. stack.Terms.OfType<FeatureTerm>().Select(term => term.At.Position).Distinct(StringComparer.Ordinal)];
        var built = new AsBuilt(facts, variant, positions);
        var broken =
            from stretch in built.Stretches
            from position in positions
            from part in built.PartsAt(position, stretch)
            let reason = Judge(facts, variant, stack, stretch, position, part)
            where reason?.Met == Met.No
            select new Broken(variant.Code, position, reason, built.Question(position, part.Id, stretch));
        return broken.FirstOrDefault();
    }

    private static Reason? Judge(FamilyFacts facts, Variant variant, Stack stack, EngineSpan stretch, string position, Part part)
    {
        var question = new FitQuestion(variant.Code, position, part);
        return StackReasons.Judge(facts, question, part, new Neighbours(facts, question, stretch)).FirstOrDefault(reason => reason.Code == stack.Code);
    }

    private static Fault Fault(FamilyFacts facts, Stack stack, IReadOnlyList<Broken> byVariant)
    {
        var (rows, first) = (new FaultRows(facts), byVariant[0]);
        var terms = stack.Terms.Zip(first.Reason.Terms ?? [])
            .Select(pair => (At: (pair.First as FeatureTerm)?.At, Part: facts.FindPart(pair.Second.Part ?? "")))
            .Where(term => term.At is not null && term.Part is not null);
        return new Fault(
            FaultSort.JointContradicts,
            $"What the maker fitted does not add up: {FitWording.InWords(stack.Code)}",
            first.Reason.Text, first.Position, [.. byVariant.Select(broken => broken.Variant)],
            [rows.Of(stack), .. terms.SelectMany(term => rows.Of(term.Part!, term.At!.Feature))], // filtered just above
            first.Fit,
            "One of the values, the band of the stack or a fitment is wrong: look at the sources again, or measure the parts, and correct the row.")
        {
            Consequence = stack.Consequence,
        }.WithoutRepeatedRows();
    }
}

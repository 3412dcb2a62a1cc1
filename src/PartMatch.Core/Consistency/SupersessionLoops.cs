using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Numbers that replace each other one way only, in a circle, on the same engines: none of them is the newest.</summary>
internal static class SupersessionLoops
{
    public static IEnumerable<Fault> Find(FamilyFacts facts)
    {
        Supersession[] oneWay = [.. facts.Supersessions.Where(link => link.Way == SupersessionWay.One && link.Evidence?.IsRetracted != true)];
        var found = facts.Variants.SelectMany(variant => LoopsOn(variant, oneWay).Select(loop => (variant, loop)))
            .GroupBy(one => string.Join('\n', one.loop), StringComparer.Ordinal);
        foreach (var group in found)
        {
            IReadOnlyList<string> loop = group.First().loop;
            Supersession[] links = [.. oneWay.Where(link => loop.Zip(loop.Skip(1)).Contains((link.OldPart, link.NewPart)))];
            var place = facts.Fitments.FirstOrDefault(fitment => fitment.Part is { } part && loop.Contains(part, StringComparer.Ordinal));
            var rows = new FaultRows(facts);
            yield return new Fault(
                FaultSort.SupersessionLoop,
                $"Numbers replace each other in a circle: {string.Join(" → ", loop)}",
                $"Each is said to be replaced by the next and not the other way round, so none of them is the newest: {string.Join(" → ", loop)}. "
                    + "Every one of them passes as a newer number of every other.",
                place?.Position, [.. group.Select(one => one.variant.Code).Distinct(StringComparer.Ordinal)], [.. links.Select(rows.Of)],
                place is null ? null : QuestionAbout(facts, place),
                "Find out which number is the newest and remove the row that leads back from it; "
                    + "where either may stand in for the other, write one row with way both.");
        }
    }

    private static string QuestionAbout(FamilyFacts facts, Fitment place) => new Permalink("/api/fit")
        .With("family", facts.Family.Code).With("variant", place.Variant).With("position", place.Position).With("part", place.Part).ToString();

    /// <summary>The shortest loop through each part, each loop once, from its first part in ordinal order back to it.</summary>
    private static IEnumerable<IReadOnlyList<string>> LoopsOn(Variant variant, Supersession[] oneWay)
    {
        Supersession[] here = [.. oneWay.Where(link => link.HoldsFor(variant.Code))];
        return EngineSpans.Cut(variant.Span, built: null, serial: null, [.. here.Select(link => link.Span)]).Stretches
            .SelectMany(stretch => Loops([.. here.Where(link => stretch.IsIn(link.Span))]))
            .DistinctBy(loop => string.Join('\n', loop.Order(StringComparer.Ordinal)));
    }

    private static IEnumerable<IReadOnlyList<string>> Loops(Supersession[] links) =>
        links.Select(link => (link, back: IdentityCheck.PermittedChain(links, link.NewPart, link.OldPart)))
            .Where(one => one.back is not null)
            .Select(one => InOrder([one.link.OldPart, .. one.back!.Select(step => step.From)])); // filtered just above

    private static IReadOnlyList<string> InOrder(IReadOnlyList<string> loop)
    {
        var first = loop.Index().MinBy(one => one.Item, StringComparer.Ordinal).Index;
        return [.. loop.Skip(first), .. loop.Take(first), loop[first]];
    }
}

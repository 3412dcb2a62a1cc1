using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>
/// How a part stands to a fitted one by number alone: the same, or linked by supersession. Old to new always counts, new to old only over
/// links that hold both ways, each within its variants and span.
/// </summary>
internal static class IdentityCheck
{
    /// <summary>The relation, the shortest chain from the fitted part, and whether it is identity.</summary>
    /// <param name="Loop">
    /// Parts of a loop of one-way links that runs through the fitted part, the one asked about, or one between; empty when there is none.
    /// </param>
    internal sealed record Link(IdentityRelation Relation, IReadOnlyList<ChainLink> Chain, bool OutsideLimits, IReadOnlyList<string> Loop)
    {
        public bool IsIdentity => Relation is IdentityRelation.FittedHere or IdentityRelation.NewerNumber or IdentityRelation.SameBothWays;
    }

    public static Link Between(FamilyFacts facts, string variant, EngineSpan span, string fitted, string asked)
    {
        Supersession[] recorded = [.. facts.Supersessions.Where(link => link.Evidence?.IsRetracted != true)];
        Supersession[] within = [.. recorded.Where(link => link.HoldsFor(variant) && span.IsIn(link.Span))];
        if (fitted == asked)
        {
            return new Link(IdentityRelation.FittedHere, [], OutsideLimits: false, LoopThrough(within, [fitted]));
        }

        if (PermittedChain(within, fitted, asked) is { } chain)
        {
            var bothWays = chain.All(link => link.Way == SupersessionWay.Both);
            return new Link(
                bothWays ? IdentityRelation.SameBothWays : IdentityRelation.NewerNumber, chain, OutsideLimits: false,
                LoopThrough(within, [fitted, .. chain.Select(link => link.To)]));
        }

        // Against the arrow: the fitted part is reached from the one asked about by the steps that are permitted.
        Supersession[] both = [.. within.Where(link => link.Way == SupersessionWay.Both)];
        if (Walk(fitted, asked, step => Backward(within, step, onlyBoth: false).Concat(Forward(both, step))) is { } against)
        {
            return new Link(IdentityRelation.OlderNumber, against, OutsideLimits: false, LoopThrough(within, [fitted, .. against.Select(link => link.To)]));
        }

        var outside = PermittedChain(recorded, fitted, asked);
        return new Link(IdentityRelation.AnotherPart, outside ?? [], OutsideLimits: outside is not null, []);
    }

    /// <summary>Is it one part, or do the two stand in for each other on both variants, whenever built?</summary>
    public static bool SameBothWays(FamilyFacts facts, (string Variant, string Part) left, (string Variant, string Part) right)
    {
        Supersession[] both =
        [
            .. facts.Supersessions.Where(link =>
                link.Way == SupersessionWay.Both && link.Evidence?.IsRetracted != true && link.HoldsFor(left.Variant) && link.HoldsFor(right.Variant)),
        ];
        return left.Part == right.Part || PermittedChain(both, left.Part, right.Part) is not null;
    }

    /// <summary>The shortest chain of these links from one part to another in the direction each permits; null when there is none.</summary>
    public static IReadOnlyList<ChainLink>? PermittedChain(Supersession[] links, string from, string to) =>
        Walk(from, to, step => Forward(links, step).Concat(Backward(links, step, onlyBoth: true)));

    private static IEnumerable<ChainLink> Forward(Supersession[] links, string from) =>
        links.Where(link => link.OldPart == from).Select(link => Step(link, link.OldPart, link.NewPart));

    private static IEnumerable<ChainLink> Backward(Supersession[] links, string from, bool onlyBoth) =>
        links.Where(link => link.NewPart == from && (!onlyBoth || link.Way == SupersessionWay.Both)).Select(link => Step(link, link.NewPart, link.OldPart));

    private static ChainLink Step(Supersession link, string from, string to)
    {
        var pieces = link.Quantity > 1 ? $"; {link.Quantity} of {link.NewPart} stand for one" : "";
        var with = link.With.Count > 0 ? $"; together with {string.Join(", ", link.With)}" : "";
        var way = link.Way == SupersessionWay.Both ? "either may stand in for the other" : "not the other way round";

        // What must come along belongs to the newer number; the older one was there without.
        return new ChainLink(
            from, to, link.Way, link.Quantity, to == link.NewPart ? link.With : [], $"{link.OldPart} is replaced by {link.NewPart} ({way}){pieces}{with}");
    }

    /// <summary>Shortest chain by breadth first search with a visited set, so that loops end; ties by part.</summary>
    private static IReadOnlyList<ChainLink>? Walk(string from, string to, Func<string, IEnumerable<ChainLink>> steps)
    {
        var cameBy = new Dictionary<string, ChainLink?>(StringComparer.Ordinal) { [from] = null };
        var queue = new Queue<string>([from]);
        while (queue.TryDequeue(out var here) && !cameBy.ContainsKey(to))
        {
            foreach (var step in steps(here).OrderBy(step => step.To, StringComparer.Ordinal))
            {
                if (cameBy.TryAdd(step.To, step))
                {
                    queue.Enqueue(step.To);
                }
            }
        }

        if (!cameBy.TryGetValue(to, out var last))
        {
            return null;
        }

        var chain = new List<ChainLink>();
        for (var step = last; step is not null; step = cameBy[step.From])
        {
            chain.Add(step);
        }

        chain.Reverse();
        return chain;
    }

    private static IReadOnlyList<string> LoopThrough(Supersession[] links, IReadOnlyList<string> parts)
    {
        Supersession[] oneWay = [.. links.Where(link => link.Way == SupersessionWay.One)];
        foreach (var part in parts)
        {
            var loops = Forward(oneWay, part).OrderBy(step => step.To, StringComparer.Ordinal)
                .Select(step => Walk(step.To, part, here => Forward(oneWay, here))).OfType<IReadOnlyList<ChainLink>>();
            if (loops.MinBy(back => back.Count) is { } shortest)
            {
                return [part, .. shortest.Select(step => step.From), part];
            }
        }

        return [];
    }
}

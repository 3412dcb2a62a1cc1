using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>Every two parts of a family that can be mixed up, the most dangerous first.</summary>
public static class PairRanking
{
    // The facts are immutable and the whole list costs thousands of fit questions: worked out once for each family.
    private static readonly ConditionalWeakTable<object, ConcurrentDictionary<string, IReadOnlyList<Ranked>>> _ranked = [];

    /// <param name="Number">The number of the first part that is near one of the other's; null when only the eye mixes them up.</param>
    private sealed record Ranked(LookAlikePair Pair, PartNumber? Number, PartRelation Relation)
    {
        /// <summary>Which of the two is a means nothing, so the offers of both count.</summary>
        public ListRank RankAmong(Odds odds) => Pair.RankAmong(odds) with
        {
            Offers = odds.OffersOf(Pair.Asked.Id ?? "") + odds.OffersOf(Pair.Other.Id ?? ""),
            Key = Pair.Asked.Id ?? "",
        };

        public DangerLevel DangerAmong(Odds odds) => Pair.DangerAmong(odds);
    }

    /// <summary>Decides one question: near numbers, complete, together with the parts of one kind that the eye cannot separate.</summary>
    /// <exception cref="ArgumentException">The family is not in the base, the limit is below 1, or the cursor is not one that an answer gave out.</exception>
    public static PairAnswer Decide(LookAlikeFacts facts, PairQuestion question)
    {
        var all = All(facts, question.Family);
        List<Ranked> wanted =
        [
            .. all.Where(one => question.Kind is null || one.Pair.Asked.Part?.Kind == question.Kind || one.Pair.Other.Part?.Kind == question.Kind)
                .Where(one => question.Danger is null || one.DangerAmong(facts.Odds) == question.Danger)
                .Where(one => question.Judgement is null || one.Relation == question.Judgement)

                // Not kept in order: the order rests on counts, which change with every offer.
                .OrderBy(one => one.RankAmong(facts.Odds)),
        ];
        var page = ListPage.Of(wanted, one => one.RankAmong(facts.Odds), question.Limit, question.Cursor);
        int Count(DangerLevel level) => all.Count(one => one.DangerAmong(facts.Odds) == level);
        var notJudged = all.Count(one => one.Relation == PartRelation.NotJudged);
        return new PairAnswer(
            new PairAsked(question.Family, question.Kind, question.Danger, question.Judgement, question.Limit),
            Complete: true,
            LookAlikeIndex.LimitFor(new string('0', NumberKey.MaxLength)),
            new PairCounts(Count(DangerLevel.High), Count(DangerLevel.Medium), Count(DangerLevel.Low), Count(DangerLevel.None), notJudged),
            wanted.Count,
            page.Cursor,
            [.. page.Rows.Select(one => Row(facts, one))]);
    }

    /// <summary>The pairs that one of these parts is in, of this danger at least, most dangerous first.</summary>
    internal static IReadOnlyList<PairRow> Endangering(LookAlikeFacts facts, string family, IReadOnlySet<string> parts, DangerLevel least) =>
    [
        .. All(facts, family).Where(one => parts.Contains(one.Pair.Asked.Id ?? "") || parts.Contains(one.Pair.Other.Id ?? ""))
            .Where(one => one.DangerAmong(facts.Odds) >= least).OrderBy(one => one.RankAmong(facts.Odds)).Select(one => Row(facts, one)),
    ];

    private static IReadOnlyList<Ranked> All(LookAlikeFacts facts, string code)
    {
        var kept = _ranked.GetOrCreateValue(facts.Ground).GetOrAdd(code, family => Rank(facts, family));
        var family = facts.Families.First(one => one.Family.Code == code); // ranked: it is there

        // What was delivered for what is counted later than the pairs were found.
        return
        [
            .. kept,
            .. facts.Odds.MixUps.Where(count => count.Wrong > 0 && (family.FindPart(count.Asked) ?? family.FindPart(count.Sent)) is not null)
                .Select(count => InOrder(count.Asked, count.Sent)).Distinct()
                .Where(pair => !kept.Any(one => one.Pair.Asked.Id == pair.A && one.Pair.Other.Id == pair.B))
                .Select(pair => Judge(facts, code, pair, null, sameToTheEye: false)),
        ];
    }

    private static IReadOnlyList<Ranked> Rank(LookAlikeFacts facts, string code)
    {
        var family = facts.Families.FirstOrDefault(one => one.Family.Code == code)
            ?? throw new ArgumentException($"{code} is not a family of this base.", nameof(code));
        var near = NearestNumbers(facts, family);
        var traps = facts.Pairs.Where(pair => (family.FindPart(pair.PartA) ?? family.FindPart(pair.PartB)) is not null)
            .Where(pair => facts.IsTrap(facts.FindPart(pair.PartA), facts.FindPart(pair.PartB)))
            .Select(pair => InOrder(pair.PartA, pair.PartB));
        var eye = family.Parts.Select(part => facts.FindPart(part.Id))
            .SelectMany(facts.OthersOfKind, (part, other) => (part, other))
            .Where(pair => LookAlikeSearch.AreSameToTheEye(facts, pair.part, pair.other))
            .Select(pair => InOrder(pair.part.Id ?? "", pair.other.Id ?? ""))
            .ToHashSet();
        return
        [
            .. near.Keys.Union(eye).Union(traps).AsParallel()
                .Select(pair => Judge(facts, code, pair, near.TryGetValue(pair, out var found) ? found : null, eye.Contains(pair))),
        ];
    }

    private static (string A, string B) InOrder(string one, string other) => string.CompareOrdinal(one, other) < 0 ? (one, other) : (other, one);

    // Of all numbers that name two parts, the two that are likeliest mixed up. A casting mark that both carry is no mix-up: it narrows, and is asked about.
    private static Dictionary<(string, string), (PartNumber Number, NearNumber Near)> NearestNumbers(LookAlikeFacts facts, FamilyFacts family)
    {
        var nearest = new Dictionary<(string, string), (PartNumber Number, NearNumber Near)>();
        foreach (var number in facts.Numbers.All.Where(number => number.Identifies && family.FindPart(number.Part) is not null))
        {
            foreach (var near in facts.Numbers.Find(number.Key).Where(near => near.Number.Identifies && near.Number.Part != number.Part))
            {
                var forward = string.CompareOrdinal(number.Part, near.Number.Part) < 0;
                var pair = forward ? (number.Part, near.Number.Part) : (near.Number.Part, number.Part);
                var read = forward ? near : near.Reversed(number);
                if (!nearest.TryGetValue(pair, out var known) || read.Cost < known.Near.Cost)
                {
                    nearest[pair] = (forward ? number : near.Number, read);
                }
            }
        }

        return nearest;
    }

    private static Ranked Judge(LookAlikeFacts facts, string family, (string A, string B) pair, (PartNumber Number, NearNumber Near)? near, bool sameToTheEye)
    {
        var (a, b) = (facts.FindPart(pair.A), facts.FindPart(pair.B));
        var (harm, worst) = HarmSearch.Between(facts, family, a, b);
        var (relation, _) = PartRelations.Between(facts.Supersessions, facts.Pairs, pair.A, pair.B);
        return new Ranked(new LookAlikePair(a, b, near?.Near, sameToTheEye, harm, worst), near?.Number, relation);
    }

    private static PairRow Row(LookAlikeFacts facts, Ranked ranked)
    {
        var row = ranked.Pair.Row(facts);
        var asked = ranked.Pair.Asked;
        return new PairRow(
            new PairPart(asked.Id ?? "", ranked.Number?.Written ?? asked.Part?.Number ?? asked.Id ?? "", asked.Part?.Name, asked.Part?.Kind,
                facts.Odds.OffersOf(asked.Id ?? "")),
            new PairPart(row.Part, row.Number, row.Name, row.Kind, row.Offers),
            row.Near, row.SameToTheEye, row.Relation, row.RelationText, row.Danger, row.Ease, row.Harm, row.Worst, row.DangerText, row.Differs, row.TellApart,
            row.TellApartText, Deliveries(facts, asked.Id, row.Part));
    }

    private static WrongDeliveries? Deliveries(LookAlikeFacts facts, string? one, string other)
    {
        MixUpCount[] counted =
        [
            .. facts.Odds.MixUps.Where(count => (count.Asked == one && count.Sent == other) || (count.Asked == other && count.Sent == one)),
        ];
        return counted.Length == 0 ? null : new WrongDeliveries(counted.Sum(count => count.Deliveries), counted.Sum(count => count.Wrong));
    }
}

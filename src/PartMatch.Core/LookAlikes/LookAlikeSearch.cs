using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>Which parts can be taken for this one, how dangerous is the mix-up, and how does one tell them apart?</summary>
public static class LookAlikeSearch
{
    /// <summary>A fit answer warns of at most so many parts: more would not be read.</summary>
    private const int MostWarnings = 5;

    /// <summary>Decides one question: near numbers, complete, together with the parts that the eye cannot separate from a known one.</summary>
    /// <exception cref="ArgumentException">The family is not in the base, the limit is below 1, or the cursor is not one that an answer gave out.</exception>
    public static LookAlikeAnswer Decide(LookAlikeFacts facts, LookAlikeQuestion question)
    {
        RequireFamily(facts, question.Family);
        var asked = AskedNumber.Resolve(facts.Numbers, question.Number, question.Maker);
        CataloguePart[] known = [.. asked.Known.Select(facts.FindPart)];
        var pairs = Pairs(facts, question.Family, known, asked.Near);
        var page = ListPage.Of(pairs, pair => pair.RankAmong(facts.Odds), question.Limit, question.Cursor);
        var shown = question.AsAsked();
        return new LookAlikeAnswer(
            shown,
            [.. asked.Known.Zip(known, (id, part) => new KnownPart(id, part.Part?.Name, part.Part?.Kind))],
            [.. asked.Written.Select(number => new WrittenForm(number.Maker, number.Written, number.Sort, number.Part))],
            LookAlikeWording.Question(asked),
            SplitBy: null,
            Complete: true,
            LookAlikeIndex.LimitFor(shown.NumberKey),
            pairs.Count,
            page.Cursor,
            [.. page.Rows.Select(pair => pair.Row(facts))]);
    }

    /// <summary>Parts of medium and high danger that a buyer of this part should know of, most dangerous first, each once, at most five.</summary>
    /// <param name="family">Context for the danger; null judges over every family.</param>
    /// <exception cref="ArgumentException">The family is not in the base.</exception>
    public static IReadOnlyList<LookAlikeWarning> Warn(LookAlikeFacts facts, Part part, string? family)
    {
        RequireFamily(facts, family);
        return
        [
            .. DangerousPairs(facts, part, family).Take(MostWarnings)
                .Select(pair => pair.Row(facts))
                .Select(row => new LookAlikeWarning(row.Part, row.Name ?? row.Number, Codes.Of(row.Danger),
                    row.TellApart.Select(check => check.Text).FirstOrDefault(), row.DangerText)),
        ];
    }

    /// <summary>The other part as a look-alike of the one that is needed.</summary>
    /// <param name="needed">Both are ids of parts that some family describes.</param>
    /// <returns>Null when their numbers are not near, the eye separates them, and nobody found them mixed up.</returns>
    internal static LookAlike? Between(LookAlikeFacts facts, string family, string needed, string other)
    {
        var (asked, candidate) = (facts.FindPart(needed), facts.FindPart(other));
        var near = facts.Numbers.Find(asked.Part?.Key ?? "").Where(one => one.Number.Part == other).OrderBy(one => one.Cost).FirstOrDefault();
        var sameToTheEye = AreSameToTheEye(facts, asked, candidate);
        if (near is null && !sameToTheEye && !facts.IsTrap(asked, candidate) && !facts.Odds.CameInstead(needed, other))
        {
            return null;
        }

        var (harm, worst) = HarmSearch.Between(facts, family, asked, candidate);
        return new LookAlikePair(asked, candidate, near, sameToTheEye, harm, worst).Row(facts);
    }

    /// <summary>Ids of the parts of medium and high danger to a buyer of this one, most dangerous first.</summary>
    internal static IReadOnlyList<string> Dangerous(LookAlikeFacts facts, Part part, string? family, int most) =>
        [.. DangerousPairs(facts, part, family).Take(most).Select(pair => pair.Other.Id).OfType<string>()];

    /// <summary>The same as rows of a list.</summary>
    internal static IReadOnlyList<LookAlike> DangerousRows(LookAlikeFacts facts, Part part, string? family, int most) =>
        [.. DangerousPairs(facts, part, family).Take(most).Select(pair => pair.Row(facts))];

    private static IEnumerable<LookAlikePair> DangerousPairs(LookAlikeFacts facts, Part part, string? family)
    {
        var near = facts.Numbers.Find(part.Key).Where(near => near.Number.Part != part.Id);
        var known = facts.FindPart(part.Id);
        return Pairs(facts, family, [known], near.Where(near => CanBeDangerous(facts, known, near)))
            .DistinctBy(pair => pair.Other.Id)
            .Where(pair => pair.DangerAmong(facts.Odds) >= DangerLevel.Medium);
    }

    /// <summary>The danger that a list of parts shows beside a number: the largest, where it is medium or high.</summary>
    public static DangerLevel? LargestDanger(LookAlikeFacts facts, string id) => facts.LargestDanger.GetOrAdd(id, Find, facts);

    private static DangerLevel? Find(string id, LookAlikeFacts facts) => facts.FindPart(id).Part is { } part
        ? DangerousPairs(facts, part, null).Select(pair => (DangerLevel?)pair.DangerAmong(facts.Odds)).FirstOrDefault()
        : null;

    // Of two kinds, near by more than look-alike characters, and never delivered for one another: ease 1, and the harm of what does not fit is 3 at most, so the danger is low at most.
    private static bool CanBeDangerous(LookAlikeFacts facts, CataloguePart known, NearNumber near) =>
        near.FoldedEdits == 0 || facts.Odds.CameInstead(known.Id, near.Number.Part) || facts.FindPart(near.Number.Part) is not { Part: { } other } || known.Part is null || other.Kind == known.Part.Kind
        || facts.Supersessions.Any(link => link.OldPart == other.Id || link.NewPart == other.Id || link.OldPart == known.Id || link.NewPart == known.Id);

    /// <summary>Is that text a cursor that an answer could have given out?</summary>
    public static bool IsCursor(string text) => ListRank.Find(text) is not null;

    private static void RequireFamily(LookAlikeFacts facts, string? family)
    {
        if (family is not null && facts.Families.All(one => one.Family.Code != family))
        {
            throw new ArgumentException($"{family} is not a family of this base.", nameof(family));
        }
    }

    /// <summary>Every candidate against the known part that makes it most dangerous, in the order of the list.</summary>
    private static List<LookAlikePair> Pairs(LookAlikeFacts facts, string? family, CataloguePart[] known, IEnumerable<NearNumber> near)
    {
        // A part with several near numbers is judged once.
        var judged = new Dictionary<(string? Asked, string? Other), LookAlikePair>();
        LookAlikePair Judge(CataloguePart asked, CataloguePart other, NearNumber? number)
        {
            if (!judged.TryGetValue((asked.Id, other.Id), out var pair))
            {
                var (harm, worst) = HarmSearch.Between(facts, family, asked, other);
                judged[(asked.Id, other.Id)] = pair = new LookAlikePair(asked, other, null, AreSameToTheEye(facts, asked, other), harm, worst);
            }

            return pair with { Number = number };
        }

        // An ambiguous number is judged against the parts it means other than the candidate itself.
        var byNumber = near.Select(number => (number, other: facts.FindPart(number.Number.Part)))
            .Select(found => known.Where(asked => known.Length == 1 || asked.Id != found.other.Id)
                .DefaultIfEmpty(CataloguePart.Unknown)
                .Select(asked => Judge(asked, found.other, found.number))
                .OrderBy(pair => pair.RankAmong(facts.Odds)).First())
            .ToList();
        var listed = byNumber.Select(pair => pair.Other.Id).Concat(known.Select(part => part.Id)).ToHashSet(StringComparer.Ordinal);
        var byEye = known
            .SelectMany(asked => facts.OthersOfKind(asked)
                .Where(other => !listed.Contains(other.Id) && (AreSameToTheEye(facts, asked, other) || facts.IsTrap(asked, other)
                    || facts.Odds.CameInstead(asked.Id, other.Id)))
                .Select(other => Judge(asked, other, null)))
            .OrderBy(pair => pair.RankAmong(facts.Odds))
            .DistinctBy(pair => pair.Other.Id);
        return [.. byNumber.Concat(byEye).OrderBy(pair => pair.RankAmong(facts.Odds))];
    }

    internal static bool AreSameToTheEye(LookAlikeFacts facts, CataloguePart asked, CataloguePart other) =>
        asked.IsSameKindAs(other) && asked.Id != other.Id && asked is { Part: { } part, Kind: { } kind } && other.Part is { } otherPart
        && PartDifferences.AreSameToTheEye(facts.Mattering, kind, part, otherPart);
}

using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Identification;
using PartMatch.Core.Listings;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Openings;

namespace PartMatch.Core.Yard;

/// <summary>What to look for in a yard, for one plan.</summary>
public static class YardLists
{
    /// <summary>More are not read in the rain; the checks rule out all of them. Ours, no source.</summary>
    private const int MostMistaken = 5;

    private const string Single = "single-use-bolts";

    // What holds of any engine that lies in a yard.
    private static readonly string[] _cautions = ["donor-in-the-yard", "fuel-pressure", "high-voltage", "hot-parts", "lifting", "magnet-rotor",
        "residual-rail-pressure"];

    // Of what the kinds warn of, what matters before a part is fitted anywhere.
    private static readonly string[] _whilePulling = ["cleaner-vapour", "compressed-springs", "emissions-law", "sodium-filled"];

    /// <param name="lookAlikes">Of every family of the base: what lies in the yard need not be of this one.</param>
    public static YardList Of(BuildFacts facts, LookAlikeFacts lookAlikes, Build build, BuildPlan plan)
    {
        BuildLine[] wanted = [.. plan.Lines.Where(line => line.Buy.Count > 0)];
        YardPart[] parts = [.. wanted.AsParallel().AsOrdered().Select(line => Part(facts, lookAlikes, build, plan, line))];
        var codes = parts.Where(part => part.BuyNew is null).SelectMany(part => KindOf(facts.Family, part.Position)?.Cautions ?? [])
            .Intersect(_whilePulling);
        return new YardList(plan.Asked, plan.Status, YardWords.Headline(plan, parts), parts, [.. Tools(parts)], Cautions.Of(_cautions.Concat(codes)));
    }

    private static YardPart Part(BuildFacts facts, LookAlikeFacts lookAlikes, Build build, BuildPlan plan, BuildLine line)
    {
        var position = facts.Family.Positions.First(one => one.Code == line.Position);
        string[] sellers = [.. line.Buy.Select(buy => plan.Baskets.FirstOrDefault(basket => basket.Items.Any(item => item.Offer == buy.Offer))?.Name ?? buy.Seller).Distinct(StringComparer.Ordinal)];
        return new YardPart(
            line.Position, line.Name, line.Group, line.Pieces, BuyNew(facts.Family, build, position), line.Cost, FitWording.List(sellers),
                ConditionOf(facts, line), position.AccessMinutes,
            position.Access, [.. Ids(line).Select(id => facts.Family.FindPart(id)).OfType<Part>().Select(part => Find(facts.Family, lookAlikes, part))])
        {
            IsShare = plan.Baskets.SelectMany(basket => basket.Items).Any(item => item.For.Count > 1 && line.Buy.Any(buy => buy.Offer == item.Offer)),
        };
    }

    private static ItemCondition? ConditionOf(BuildFacts facts, BuildLine line)
    {
        ItemCondition[] conditions =
        [
            .. facts.Buying.Offers.Where(offer => line.Buy.Any(buy => buy.Offer == $"{offer.Book}/{offer.Code}")).Select(offer => offer.Condition).Distinct(),
        ];
        return conditions is [var only] ? only : null;
    }

    private static IReadOnlyList<string> Ids(BuildLine line) => line.Part is { } only ? [only] : line.OneOf;

    private static string? BuyNew(FamilyFacts family, Build build, Position position) =>
        KindOf(family, position.Code)?.Cautions.Contains(Single) == true ? "Single use: a used one is not fitted again."
        : IsRenewed(family, build, position.Code) ? "Renewed when something is opened: a used one is no new one."
        : build.Wishes.Any(wish => wish.OnlyNew && (wish.Position == position.Code || wish.Group == position.Group)) ? "You want it new."
        : null;

    private static bool IsRenewed(FamilyFacts family, Build build, string position) =>
        Disturbance.Renewals(family, [build.Donor.Variant, build.Target ?? build.Donor.Variant]).Any(row => row.Renewed == position);

    private static YardFind Find(FamilyFacts family, LookAlikeFacts lookAlikes, Part part)
    {
        var mistaken = LookAlikeSearch.DangerousRows(lookAlikes, part, null, PartIdentification.MostLookAlikes);
        IReadOnlyList<Confirmation> confirm = mistaken.Count == 0 ? [] : Confirm(lookAlikes, [part.Id, .. mistaken.Select(row => row.Part)]);
        return new YardFind(
            part.Id, part.Number, part.Name,
            [.. lookAlikes.Numbers.All.Where(number => number.Part == part.Id).OrderByDescending(number => number.Written == part.Number)
                .ThenByDescending(number => number.Identifies).ThenBy(number => number.Written, StringComparer.Ordinal)
                .Select(number => new YardNumber(number.Written, number.Sort, number.Identifies))],
            YardWords.SitsOn(family, part.Id), confirm.Count > 0 ? confirm : YardChecks.Quickest(family.FindKind(part.Kind), part),
            [.. mistaken.Take(MostMistaken).Select(row => new YardLookAlike(
                    row.Part, row.Number, row.Name, row.Danger, row.DangerText, row.TellApartText,
                        row.TellApart.Any(check => YardChecks.CanBeMade(check.Check)),
                    YardWords.SitsOn(family, row.Part)))]);
    }

    private static IReadOnlyList<Confirmation> Confirm(LookAlikeFacts lookAlikes, IReadOnlyList<string> parts) =>
        PartIdentification.Decide(lookAlikes, parts, new TellApartTerms(CheckMode.InHand, YardChecks.Tools, [])) is TellApartDecided { Answer: var answer }
            ? answer.Confirm
            : throw new InvalidOperationException("What was seen is never refused where nothing was seen.");

    private static IEnumerable<YardTool> Tools(YardPart[] parts) => parts
        .SelectMany(part => part.OneOf, (part, find) => (part.Name, find))
        .SelectMany(one => one.find.Recognise, (one, check) => (one.Name, check.Check.Method))
        .Where(one => TellApartTerms.AllTools.Contains(one.Method) || one.Method == Method.Photo)
        .GroupBy(one => one.Method).OrderBy(same => same.Key)
        .Select(same => new YardTool(same.Key, [.. same.Select(one => one.Name).Distinct(StringComparer.Ordinal)]));

    private static Kind? KindOf(FamilyFacts family, string position) => family.Positions.FirstOrDefault(one => one.Code == position) is { } found ? family.FindKind(found.Kind) : null;
}

using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Identification;
using PartMatch.Core.Listings;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Donors;

/// <summary>The ranking of donors in words.</summary>
internal static class DonorWords
{
    public static string Headline(IReadOnlyList<RankedDonor> ranked, PlanObjective objective)
    {
        RankedDonor[] first = [.. ranked.Where(donor => donor.Rank == 1)];
        var open = ranked.Count(donor => donor.Rank is null && donor.ToFinish is not null);
        var without = ranked.Count(donor => donor.ToFinish is null);
        string[] besides =
        [
            .. open > 0 ? [Count(open, "has no known price and freight", "have no known price and freight")] : Array.Empty<string>(),
            .. without > 0 ? [Count(without, "has no plan", "have no plan")] : Array.Empty<string>(),
            .. ranked.Any(donor => donor.Status is PlanStatus.BestFound or PlanStatus.OutOfTime or PlanStatus.StoppedByYou)
                ? ["not every plan is proven to be the best: the order can still change"]
                : Array.Empty<string>(),
        ];
        var best = first switch
        {
            [] => "No donor has both a plan and a known price",
            [var one] => $"{one.Name} {Best(objective)}: {one.Whole?.Amount} {one.Whole?.Currency} with everything, ready on {one.ReadyOn:yyyy-MM-dd}",
            [var one, ..] => $"{string.Join(" and ", first.Select(donor => donor.Name))} come to the same: {one.Whole?.Amount} {one.Whole?.Currency} with everything",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{best}{string.Concat(besides.Select(said => $"; {said}"))}.");
    }

    /// <summary>How the whole comes about, or what of it is missing.</summary>
    public static string Cost(BuildTerms terms, long? toFinish, long? price, long? freight)
    {
        if (toFinish is not { } finish)
        {
            return "There is no plan, so nothing can be added up.";
        }

        string[] missing =
        [
            .. price is null ? [terms.Build.Donor.Price is null ? "its price is not known" : "its price is in a currency without a rate"] : Array.Empty<string>(),
            .. freight is null ? [terms.Build.Donor.Freight is null ? "what it costs to fetch is not known" : "its freight is in a currency without a rate"] : Array.Empty<string>(),
        ];
        return missing.Length > 0
            ? $"{terms.Say(finish)} to finish; {string.Join(", and ", missing)}."
            : $"{terms.MoneyOf(finish).Amount} to finish + {terms.MoneyOf(price ?? 0).Amount} price + {terms.MoneyOf(freight ?? 0).Amount} freight = "
                + $"{terms.Say(finish + (price ?? 0) + (freight ?? 0))}.";
    }

    public static IReadOnlyList<string> Flags(BuildTerms terms, BuildPlan plan, long? whole)
    {
        var donor = terms.Build.Donor;
        return
        [
            .. terms.Budget is { } purse && whole > purse
                ? [$"With its price and freight it is {terms.Say(whole.Value - purse)} over your budget, which the plan alone keeps."]
                : Array.Empty<string>(),
            .. donor.Level is AssemblyLevel.Bare or AssemblyLevel.Short or AssemblyLevel.Long
                ? [$"Sold as {Level(donor.Level.Value)}. What is beyond that and not said to be missing is counted as there: say of each position what is missing."]
                : Array.Empty<string>(),
            .. donor is { Built: null, Serial: null } ? ["Neither build date nor serial number is known: ask for the plate, some parts hang on it."] : Array.Empty<string>(),
            .. donor.SeenOn is { } seen ? [$"Seen on {seen}: ask whether it is still there, and as it was."] : Array.Empty<string>(),
            .. plan.Flags,
        ];
    }

    public static string Identity(TellApartAnswer identity) => identity.Confirm.Count == 0
        ? "No check with a rule and a caliper tells it from the other variants: ask for its papers and its numbers."
        : $"Is it what it is said to be? All of these have to come out so. {identity.HeadlineText}";

    private static string Best(PlanObjective objective) => objective switch
    {
        PlanObjective.Soonest => "is ready soonest",
        PlanObjective.Surest => "is surest",
        PlanObjective.MostKept => "keeps most of the donor",
        _ => "is cheapest to finish",
    };

    private static string Level(AssemblyLevel level) => level switch
    {
        AssemblyLevel.Bare => "a bare block",
        AssemblyLevel.Short => "a short engine, with crankshaft, rods and pistons",
        _ => "a long engine, with head and valve gear",
    };

    private static string Count(int many, string one, string several) => string.Create(CultureInfo.InvariantCulture, $"{many} {(many == 1 ? one : several)}");
}

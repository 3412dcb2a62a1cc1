using PartMatch.Core.Planning;

namespace PartMatch.Core.Donors;

/// <summary>In which order donors stand, and why.</summary>
internal static class DonorOrder
{
    /// <summary>What two donors are compared by, the least first; a measure has a word for what is better about the lesser.</summary>
    private sealed record Measure(string Better, Func<PlannedDonor, long> Of);

    private static readonly Measure _cost = new("costs less", donor => donor.Whole ?? 0);
    private static readonly Measure _days = new("is ready sooner", donor => donor.Row.Days ?? 0);
    private static readonly Measure _sureness = new("its weakest line is surer", donor => -(long)(donor.Row.Sureness ?? 0));
    private static readonly Measure _unknowns = new("rests on fewer unknowns", donor => donor.Row.Unknowns ?? 0);
    private static readonly Measure _kept = new("keeps more of the donor", donor => -(donor.Row.Kept ?? 0));

    public static IReadOnlyList<RankedDonor> Of(IReadOnlyList<PlannedDonor> planned, PlanObjective objective)
    {
        var measures = MeasuresOf(objective);
        var known = planned.Where(donor => donor.Whole is not null).ToList();
        List<PlannedDonor> placed = [.. known.OrderBy(donor => donor, Comparer<PlannedDonor>.Create((one, other) => Compare(measures, one, other)))];
        var rows = new List<RankedDonor>();
        for (var place = 0; place < placed.Count; place++)
        {
            var isTied = place > 0 && Compare(measures, placed[place - 1], placed[place]) == 0;
            var rank = isTied ? rows[^1].Rank : place + 1;
            rows.Add(Row(placed[place], known) with
            {
                Rank = rank,
                RankText = $"{Why(measures, placed, place, rank ?? 1)} {Worth(placed[place], known)}".TrimEnd(),
            });
        }

        return
        [
            .. rows,
            .. planned.Where(donor => donor is { Whole: null, ToFinish: not null }).OrderBy(donor => donor.ToFinish)
                .Select(donor => Row(donor, known) with
                {
                    RankText = $"Its place is not known: its price and freight are not both recorded with a rate. {Worth(donor, known)}".TrimEnd(),
                }),
            .. planned.Where(donor => donor.ToFinish is null).Select(donor => donor.Row with { RankText = "There is no plan that begins with it." }),
        ];
    }

    private static Measure[] MeasuresOf(PlanObjective objective) => objective switch
    {
        PlanObjective.Soonest => [_days, _cost, _sureness, _unknowns],
        PlanObjective.Surest => [_sureness, _unknowns, _cost, _days],
        PlanObjective.MostKept => [_kept, _cost, _days, _sureness, _unknowns],
        _ => [_cost, _days, _sureness, _unknowns],
    };

    private static int Compare(Measure[] measures, PlannedDonor one, PlannedDonor other) =>
        measures.Select(measure => measure.Of(one).CompareTo(measure.Of(other))).FirstOrDefault(difference => difference != 0);

    private static string Why(Measure[] measures, List<PlannedDonor> placed, int place, int rank)
    {
        var ties = placed.Where((other, index) => index != place && Compare(measures, placed[place], other) == 0).Select(other => other.Row.Name).ToList();
        if (ties.Count > 0)
        {
            return $"Comes to the same as {string.Join(" and ", ties)} in everything that is compared: the order of the two is that of your list.";
        }

        var next = place + 1 < placed.Count ? placed[place + 1] : null;
        var beaten = next is null ? null : measures.First(measure => measure.Of(placed[place]) != measure.Of(next));
        return (rank, next) switch
        {
            (1, null) => "The only one with a known price.",
            (_, null) => $"Behind {placed[place - 1].Row.Name}.",
            _ when beaten == measures[0] => $"Before {next.Row.Name}: it {beaten.Better}.",
            _ => $"Comes to the same as {next.Row.Name} in what counts first; before it because it {beaten?.Better}.",
        };
    }

    private static RankedDonor Row(PlannedDonor donor, List<PlannedDonor> known)
    {
        return donor.Row with { WorthUpTo = Room(donor, known) is >= 0 and { } worth ? donor.MoneyOf(worth) : null };
    }

    private static string Worth(PlannedDonor donor, List<PlannedDonor> known) => Room(donor, known) < 0 ? "Even for nothing it would not be the cheapest." : "";

    /// <summary>What it may cost until another comes to the same; below 0 where one does in any case; null where there is no other.</summary>
    private static long? Room(PlannedDonor donor, List<PlannedDonor> known) => known.Where(other => other != donor).Min(other => other.Whole) - donor.ToFinish;
}

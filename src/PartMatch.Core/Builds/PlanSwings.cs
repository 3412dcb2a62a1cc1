using System.Globalization;
using PartMatch.Core.Fit;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>Which single price, delay or unknown fit would change the cheapest plan, and into what.</summary>
internal static class PlanSwings
{
    /// <summary>Offers and lines that are tried, so that the answer comes in time; ours, no source.</summary>
    private const int MostTried = 40;

    /// <summary>Packs of one offer are given up one number after the other at most so often, then all at once.</summary>
    private const int MostSteps = 3;

    /// <summary>Days that an offer is thought to be late at most, ten years; ours, no source.</summary>
    private const int LongestDelay = 3660;

    /// <summary>Those of least room first, prices before delays before fits.</summary>
    public static IReadOnlyList<PlanSwing> Of(BuildQuestion question)
    {
        var solved = question.Solved;
        int[] bought = [.. solved.Solution.Packs.Index().Where(packs => packs.Item > 0 && solved.Written.Offers[packs.Index].Bought is null)
            .Select(packs => packs.Index).Take(MostTried)];
        JudgedLine[] unsure =
            [.. solved.Lines.Where(line => line.Outcome == LineOutcome.NotKnown || (line.Sureness == Sureness.Unproven && !line.Candidate.IsNothing)).Take(MostTried)];
        return
        [
            .. Each(question, bought, Price)
                .OrderBy(swing => swing.Room ?? long.MaxValue).ThenBy(swing => swing.Swing.Subject, StringComparer.Ordinal).Select(swing => swing.Swing),
            .. Each(question, bought, Delay).OfType<PlanSwing>(),
            .. Each(question, unsure, Fit),
        ];
    }

    /// <summary>In the order of what is asked; what is not asked before the stop is left out.</summary>
    /// <remarks>Several at once: each of them is a search of its own.</remarks>
    private static IReadOnlyList<TAnswer> Each<T, TAnswer>(BuildQuestion question, IReadOnlyList<T> asked, Func<BuildQuestion, T, TAnswer> ask)
    {
        var answers = new (bool IsAnswered, TAnswer Answer)[asked.Count];
        Parallel.For(
            0, asked.Count, new ParallelOptions { MaxDegreeOfParallelism = question.Effort.AtOnce }, question.ForAnotherThread,
            (place, _, own) =>
            {
                answers[place] = own.Stop.IsCancellationRequested ? default : (true, ask(own, asked[place]));
                return own;
            },
            _ => { });
        return [.. answers.Where(answer => answer.IsAnswered).Select(answer => answer.Answer)];
    }

    /// <summary>
    /// A plan of fewer packs takes over when each of those given up has become dearer by its share of what that plan costs more.
    /// </summary>
    private static (PlanSwing Swing, long? Room) Price(BuildQuestion question, int offer)
    {
        var solved = question.Solved;
        var (cost, packs) = (solved.Solution.Totals.Cost, solved.Solution.Packs[offer]);
        (long Room, int Most, long Cost)? next = null;
        var most = packs - 1;
        for (var step = 0; most >= 0; step++)
        {
            var limit = step < MostSteps ? most : 0;
            var fewer = question.Solve(written => Otherwise.Limit(written, offer, limit), PlanTies.Lines);
            if (fewer.Solution.Choices.Count == 0)
            {
                break;
            }

            var left = fewer.Solution.Packs[offer];
            var room = (fewer.Solution.Totals.Cost - cost) / (packs - left);
            next = next is { } nearest && nearest.Room <= room ? next : (room, limit, fewer.Solution.Totals.Cost);
            most = left - 1;
        }

        var subject = solved.Written.Offers[offer].Address;
        return next is not { } found
            ? (new PlanSwing("price", subject, $"{Name(solved, offer)}: there is no plan without it, whatever it costs.", null, null), null)
            : (new PlanSwing(
                "price", subject,
                found.Room == 0
                    ? $"{Name(solved, offer)}: a plan without it, or with less of it, costs the same."
                    : $"{Name(solved, offer)}: the plan stays the cheapest until a pack at the door costs {question.Terms.Say(found.Room)} more.",
                question.Terms.MoneyOf(found.Room), Becomes(question, question.Solve(written => Otherwise.LimitAt(written, offer, found.Most, found.Cost)))), found.Room);
    }

    /// <summary>Later only matters where there is a last day; null where there is none, or where nothing waits for the offer.</summary>
    private static PlanSwing? Delay(BuildQuestion question, int offer)
    {
        var solved = question.Solved;
        if (question.Terms.LastDay is not { } last)
        {
            return null;
        }

        if (RoomOf(solved, offer, last) is not { } room)
        {
            return null;
        }

        var later = question.Solve(written => Otherwise.Offer(written, offer, one => one with { ArrivesOn = one.ArrivesOn + room + 1 }));
        return new PlanSwing(
            "delay", solved.Written.Offers[offer].Address,
            string.Create(CultureInfo.InvariantCulture, $"{Name(solved, offer)}: it may come {room} {(room == 1 ? "day" : "days")} later than said; later than that this plan is not ready in time."),
            null, later.Solution.Choices.Count == 0 ? "no plan is ready in time" : Becomes(question, later));
    }

    /// <summary>By how many days it may come later; null where nothing waits for it, or the last day is further off than any delay.</summary>
    private static int? RoomOf(SolvedPlan solved, int offer, int last)
    {
        // The later it comes, the later all is ready: so the day is found by halves.
        var (fits, breaks) = (0, (int)long.Min(last + 1L, LongestDelay));
        if (DaysWith(solved, offer, breaks) <= last)
        {
            return null;
        }

        while (breaks - fits > 1)
        {
            var middle = fits + ((breaks - fits) / 2);
            (fits, breaks) = DaysWith(solved, offer, middle) > last ? (fits, middle) : (middle, breaks);
        }

        return fits;
    }

    private static int DaysWith(SolvedPlan solved, int offer, int later) => PlanCalendar.Settle(
        Otherwise.Offer(solved.Written, offer, one => one with { ArrivesOn = one.ArrivesOn + later }), solved.Solution.Choices, solved.Solution.Packs, solved.Solution.Jobs,
        solved.Solution.Totals.Days).Days;

    private static PlanSwing Fit(BuildQuestion question, JudgedLine line)
    {
        var at = question.Terms.At(line.Candidate.Position).Position;
        var without = question.Solve(written => Otherwise.Forbid(written, at.Code, one => one.IsSameAs(line.Candidate)));
        var text = $"{at.Name}: that {LineChanges.Say(line.Candidate)} fits is {(line.Outcome == LineOutcome.NotKnown ? "taken on trust" : "unproven")}";
        return without.Solution.Choices.Count == 0
            ? new PlanSwing("fit", at.Code, $"{text}; there is no plan without it.", null, null)
            : new PlanSwing(
                "fit", at.Code, $"{text}; the plan without it {LineChanges.Difference(question.Terms, question.Solved, without)}.",
                LineChanges.CostMore(question.Terms, question.Solved, without), Becomes(question, without));
    }

    private static string Name(SolvedPlan solved, int offer) =>
        $"{solved.Written.Offers[offer].Offer.Part} of {solved.Written.Offers[offer].Seller.Name}";

    private static string Becomes(BuildQuestion question, SolvedPlan other)
    {
        string[] changes = [.. LineChanges.Between(question.Run, question.Solved, other).Select(change => $"{change.Name}: {change.Becomes}")];
        return changes.Length == 0 ? "the same lines, bought otherwise" : string.Join("; ", changes);
    }
}

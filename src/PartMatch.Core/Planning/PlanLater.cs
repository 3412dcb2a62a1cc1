namespace PartMatch.Core.Planning;

/// <summary>
/// What cannot be ordered on the first day, because a job that has to be done before has to wait: for something that comes, or for other work. It travels in a
/// later parcel of its seller. Ours, no source.
/// </summary>
internal static class PlanLater
{
    /// <summary>Can the offer be ordered only after the first day, as these decisions are?</summary>
    /// <param name="isDone">For each job.</param>
    public static bool IsLater(PlanProblem problem, PlanOffer offer, IReadOnlyList<int?> choices, IReadOnlyList<bool> isDone) =>
        offer.OrderedAfter.Any(job => isDone[job] && Waits(problem, job, choices, isDone));

    /// <summary>For each offer a flag that is set where it is ordered later, and only there; null where it never is.</summary>
    public static int?[] Flags(PlanProblem problem, PlanModel model)
    {
        var waits = new int?[problem.Jobs.Count];
        var asked = Asked(problem);
        foreach (var job in asked.Count == 0 ? [] : PlanCalendar.Order(problem.Jobs) ?? [])
        {
            waits[job] = asked.Contains(job) ? AnyOf(model, [.. Causes(problem, model, waits, job)]) : null;
        }

        var ordering = problem.Offers.SelectMany(offer => offer.OrderedAfter).ToHashSet();
        int?[] orders = [.. waits.Select((late, job) => late is { } one && ordering.Contains(job) ? Both(model, model.Jobs[job], one) : (int?)null)];
        return [.. problem.Offers.Select(offer => AnyOf(model, [.. offer.OrderedAfter.Select(job => orders[job]).OfType<int>().Distinct()]))];
    }

    private static bool Waits(PlanProblem problem, int job, IReadOnlyList<int?> choices, IReadOnlyList<bool> isDone) =>
        problem.Jobs[job].NeedsPlaces.Any(place => choices[place] is { } made && Comes(problem, place, made))
        || problem.Jobs[job].AfterJobs.Any(before => isDone[before] && (problem.Jobs[before].Days > 0 || Waits(problem, before, choices, isDone)
            || (problem.Jobs[before].Orders is { } ordered && choices[ordered] is { } coming && Comes(problem, ordered, coming))));

    /// <summary>Does the choice take more than can be there on the first day?</summary>
    private static bool Comes(PlanProblem problem, int place, int choice) => PlanNeeds.Pieces(problem.Places[place].Choices[choice].Uses).Any(use =>
        use.Value > problem.Products[use.Key].InHand
            + problem.Offers.Where(offer => offer.ArrivesOn == 0).Sum(offer => offer.Packs * PlanNeeds.Pieces(offer.Holds).GetValueOrDefault(use.Key)));

    /// <summary>The jobs that an offer waits for, and those they wait for.</summary>
    private static HashSet<int> Asked(PlanProblem problem)
    {
        var left = new Stack<int>(problem.Offers.SelectMany(offer => offer.OrderedAfter));
        var asked = new HashSet<int>();
        while (left.TryPop(out var job))
        {
            if (asked.Add(job))
            {
                problem.Jobs[job].AfterJobs.ToList().ForEach(left.Push);
            }
        }

        return asked;
    }

    private static IEnumerable<int> Causes(PlanProblem problem, PlanModel model, int?[] waits, int job)
    {
        foreach (var flag in problem.Jobs[job].NeedsPlaces.Distinct().SelectMany(place => Coming(problem, model, place)))
        {
            yield return flag;
        }

        foreach (var before in problem.Jobs[job].AfterJobs.Distinct())
        {
            var work = problem.Jobs[before];
            if (work.Days > 0)
            {
                yield return model.Jobs[before];
            }
            else if (AnyOf(
                model, [.. work.Orders is { } place ? Coming(problem, model, place) : [], .. waits[before] is { } one ? [one] : Array.Empty<int>()]) is { } late)
            {
                yield return Both(model, model.Jobs[before], late);
            }
        }
    }

    private static IEnumerable<int> Coming(PlanProblem problem, PlanModel model, int place) =>
        model.Choices[place].Where((_, choice) => Comes(problem, place, choice));

    /// <summary>Null where there is none.</summary>
    private static int? AnyOf(PlanModel model, int[] flags)
    {
        if (flags.Length < 2)
        {
            return flags.Length == 0 ? null : flags[0];
        }

        var any = model.Constraints.Flag();
        model.Constraints.AnyOf([ConstraintModel.Not(any), .. flags]);
        foreach (var flag in flags)
        {
            model.Constraints.AnyOf([ConstraintModel.Not(flag), any]);
        }

        return any;
    }

    private static int Both(PlanModel model, int one, int other)
    {
        var both = model.Constraints.Flag();
        model.Constraints.AnyOf([ConstraintModel.Not(one), ConstraintModel.Not(other), both]);
        model.Constraints.AnyOf([ConstraintModel.Not(both), one]);
        model.Constraints.AnyOf([ConstraintModel.Not(both), other]);
        return both;
    }
}

namespace PartMatch.Core.Planning;

/// <summary>When everything is there and done, for decisions that are made: the earliest pieces go to whoever needs them first.</summary>
internal static class PlanCalendar
{
    /// <summary>The same work in the same order, each as early as it can be.</summary>
    /// <param name="starts">For each job a day by which it could start, in a schedule that holds; null where it is not done.</param>
    /// <param name="by">The day on which all is there and done in that schedule.</param>
    public static (IReadOnlyList<int?> Starts, int Days) Settle(
        PlanProblem problem, IReadOnlyList<int?> choices, IReadOnlyList<int> packs, IReadOnlyList<int?> starts, int by)
    {
        var ready = Ready(problem, choices, packs, starts, by);
        var earliest = new int?[problem.Jobs.Count];
        var days = ready.DefaultIfEmpty(0).Max();
        foreach (var job in InOrder(problem, starts))
        {
            var start = problem.Jobs[job].NeedsPlaces.Select(place => ready[place]).DefaultIfEmpty(0).Max();
            for (var other = 0; other < earliest.Length; other++)
            {
                if (earliest[other] is { } begun && problem.Jobs[job].AfterJobs.Contains(other))
                {
                    start = int.Max(start, End(other, begun));
                }
                else if (earliest[other] is { } held && Share(problem.Jobs[job], problem.Jobs[other]))
                {
                    start = int.Max(start, held + problem.Jobs[other].Days);
                }
            }

            earliest[job] = start;
            days = int.Max(days, End(job, start));
        }

        return (earliest, days);

        int End(int job, int begun) => begun + problem.Jobs[job].Days + (problem.Jobs[job].Orders is { } place ? ready[place] : 0);
    }

    /// <summary>Work of no days is away at no time.</summary>
    public static bool Share(PlanJob one, PlanJob other) => one.Days > 0 && other.Days > 0 && one.HoldsPlaces.Intersect(other.HoldsPlaces).Any();

    /// <summary>Every job after those it has to wait for; null where they wait for each other.</summary>
    public static IReadOnlyList<int>? Order(IReadOnlyList<PlanJob> jobs)
    {
        var order = new List<int>();
        while (order.Count < jobs.Count)
        {
            var next = Enumerable.Range(0, jobs.Count).Where(job => !order.Contains(job) && jobs[job].AfterJobs.All(order.Contains)).ToList();
            if (next.Count == 0)
            {
                return null;
            }

            order.AddRange(next);
        }

        return order;
    }

    private static IEnumerable<int> InOrder(PlanProblem problem, IReadOnlyList<int?> starts)
    {
        var order = Order(problem.Jobs) ?? [];
        return order.Where(job => starts[job] is not null).OrderBy(job => starts[job]); // stable: on the same day as they wait for each other
    }

    /// <summary>For each place, the day on which what is taken there has arrived, counted from when it is ordered.</summary>
    private static int[] Ready(PlanProblem problem, IReadOnlyList<int?> choices, IReadOnlyList<int> packs, IReadOnlyList<int?> starts, int by)
    {
        var ready = new int[problem.Places.Count];
        var neededBy = Enumerable.Repeat(by, ready.Length).ToArray();
        for (var job = 0; job < problem.Jobs.Count; job++)
        {
            foreach (var place in problem.Jobs[job].NeedsPlaces.Where(_ => starts[job] is not null))
            {
                neededBy[place] = int.Min(neededBy[place], starts[job]!.Value); // just asked
            }

            if (problem.Jobs[job].Orders is { } ordered && starts[job] is { } start)
            {
                var next = Enumerable.Range(0, problem.Jobs.Count).Where(other => problem.Jobs[other].AfterJobs.Contains(job)).Select(other => starts[other] ?? by);
                neededBy[ordered] = int.Min(neededBy[ordered], next.Append(by).Min() - start - problem.Jobs[job].Days);
            }
        }

        var supplies = Supplies(problem, packs);
        foreach (var place in Enumerable.Range(0, ready.Length).OrderBy(place => neededBy[place]).Where(place => choices[place] is not null))
        {
            foreach (var (product, pieces) in PlanNeeds.Pieces(problem.Places[place].Choices[choices[place]!.Value].Uses))
            {
                var missing = pieces;
                while (missing > 0)
                {
                    var (day, left) = supplies[product].Peek();
                    ready[place] = int.Max(ready[place], day);
                    supplies[product].Pop();
                    if (left > missing)
                    {
                        supplies[product].Push((day, left - missing));
                    }

                    missing -= long.Min(missing, left);
                }
            }
        }

        return ready;
    }

    /// <summary>For each product, what there is of it, the earliest on top.</summary>
    private static Stack<(int Day, long Pieces)>[] Supplies(PlanProblem problem, IReadOnlyList<int> packs)
    {
        var supplies = problem.Products.Select(product => new List<(int Day, long Pieces)> { (0, product.InHand) }).ToArray();
        for (var offer = 0; offer < packs.Count; offer++)
        {
            foreach (var (product, pieces) in PlanNeeds.Pieces(problem.Offers[offer].Holds).Where(_ => packs[offer] > 0))
            {
                supplies[product].Add((problem.Offers[offer].ArrivesOn, pieces * packs[offer]));
            }
        }

        return [.. supplies.Select(all => new Stack<(int Day, long Pieces)>(all.OrderByDescending(supply => supply.Day)))];
    }
}

using PartMatch.Core.Planning;

namespace PartMatch.Core.Tests.Planning;

/// <summary>Every plan of a small problem, by trying everything, as the records describe it. It shares nothing with the solver.</summary>
internal static class EveryPlan
{
    /// <summary>What each plan that holds comes to.</summary>
    public static List<(long Cost, int Days, long Risk, int Kept)> Totals(PlanProblem problem, IReadOnlySet<int>? dropped = null)
    {
        var without = dropped ?? new HashSet<int>();
        bool Holds(int? ground) => ground is not { } one || !without.Contains(one);
        var all = new List<(long, int, long, int)>();
        var choices = Choose(problem.Places.Select(place => (Holds(place.Ground) ? 0 : -1, place.Choices.Count - 1)));
        var jobs = Choose(problem.Jobs.Select(_ => (0, 1))).ToList();
        var doubts = Choose(problem.Doubts.Select(doubt => (0, doubt.IsAdmitted ? 1 : 0))).ToList();
        var packs = Choose(problem.Offers.Select(offer => (0, offer.Packs))).ToList();
        foreach (var chosen in choices)
        {
            foreach (var (done, taken) in jobs.SelectMany(_ => doubts, (done, taken) => (done, taken)))
            {
                bool IsTrue(PlanFact fact) => fact switch
                {
                    ChoiceMade made => chosen[made.Place] == made.Choice,
                    JobDone job => done[job.Job] == 1,
                    DoubtTaken doubt => taken[doubt.Doubt] == 1,
                    _ => throw new InvalidOperationException(),
                };
                if (!problem.Rules.Where(rule => Holds(rule.Ground)).All(rule => !rule.If.All(IsTrue) || rule.Then.Any(IsTrue)))
                {
                    continue;
                }

                foreach (var bought in packs.Where(bought => Suffices(problem, chosen, bought)))
                {
                    var cost = Cost(problem, chosen, bought, done);
                    if (problem.MostCost is { } most && Holds(most.Ground) && cost > most.Limit)
                    {
                        continue;
                    }

                    var days = LeastDays(problem, chosen, bought, done);
                    if (problem.LastDay is { } last && Holds(last.Ground) && days > last.Limit)
                    {
                        continue;
                    }

                    all.Add((cost, days, Risk(problem, chosen, bought, taken), Kept(problem, chosen)));
                }
            }
        }

        return all;
    }

    public static long Cost(PlanProblem problem, int[] chosen, int[] bought, int[] done) =>
        problem.FixedCost
        + Chosen(problem, chosen).Sum(choice => choice.Cost)
        + problem.Offers.Zip(bought).Sum(pair => pair.First.Price * pair.Second)
        + problem.Jobs.Zip(done).Sum(pair => pair.First.Cost * pair.Second)
        + Sending(problem, chosen, bought, done);

    public static long Sending(PlanProblem problem, int[] chosen, int[] bought, int[] done)
    {
        var sending = 0L;
        for (var seller = 0; seller < problem.Sellers.Count; seller++)
        {
            var lines = problem.Offers.Zip(bought).Where(line => line.Second > 0 && line.First.Seller == seller).ToList();
            sending += lines.Sum(line => line.First.OwnSending ?? 0);
            foreach (var later in new[] { false, true })
            {
                var parcel = lines.Where(line => line.First.OwnSending is null && line.First.OrderedAfter.Any(job => done[job] == 1 && HasToWait(problem, chosen, done, job)) == later).ToList();
                var terms = problem.Sellers[seller];
                var isFree = terms.FreeFrom is { } from && parcel.Sum(line => line.First.GoodsValue * line.Second) >= from;
                if (parcel.Count > 0 && !isFree)
                {
                    sending += terms.ParcelCost + (terms.PieceCost * parcel.Sum(line => line.Second * line.First.SentAs));
                }
            }
        }

        return sending;
    }

    /// <summary>Is what the job needs not there on the first day, or is work before it that takes days or has to wait itself?</summary>
    private static bool HasToWait(PlanProblem problem, int[] chosen, int[] done, int job)
    {
        var it = problem.Jobs[job];
        return it.NeedsPlaces.Any(place => HasToCome(problem, chosen, place))
            || it.AfterJobs.Where(before => done[before] == 1).Any(before => problem.Jobs[before].Days > 0 || HasToWait(problem, chosen, done, before)
                || (problem.Jobs[before].Orders is { } ordered && HasToCome(problem, chosen, ordered)));
    }

    /// <summary>Does what is chosen there take more than what is in hand and what is for sale with no day to wait?</summary>
    private static bool HasToCome(PlanProblem problem, int[] chosen, int place)
    {
        if (chosen[place] < 0)
        {
            return false;
        }

        var there = problem.Products.Select(product => product.InHand).ToArray();
        foreach (var offer in problem.Offers.Where(offer => offer.ArrivesOn == 0))
        {
            offer.Holds.ToList().ForEach(held => there[held.Product] += held.Pieces * offer.Packs);
        }

        return problem.Places[place].Choices[chosen[place]].Uses.GroupBy(use => use.Product).Any(product => product.Sum(use => use.Pieces) > there[product.Key]);
    }

    public static long Risk(PlanProblem problem, int[] chosen, int[] bought, int[] taken) =>
        Chosen(problem, chosen).Sum(choice => choice.Risk)
        + problem.Offers.Zip(bought).Where(line => line.Second > 0).Sum(line => line.First.Risk)
        + problem.Doubts.Zip(taken).Sum(doubt => doubt.First.Risk * doubt.Second);

    public static int Kept(PlanProblem problem, int[] chosen) => Chosen(problem, chosen).Sum(choice => choice.Kept);

    public static bool Suffices(PlanProblem problem, int[] chosen, int[] bought) =>
        Enumerable.Range(0, problem.Products.Count).All(product =>
            Chosen(problem, chosen).SelectMany(choice => choice.Uses).Where(use => use.Product == product).Sum(use => use.Pieces)
            <= problem.Products[product].InHand
            + problem.Offers.Zip(bought).Sum(line => line.Second * line.First.Holds.Where(held => held.Product == product).Sum(held => held.Pieces)));

    /// <summary>Every piece from every offer it can come from, the work in every order; given starts must hold as they are.</summary>
    public static int LeastDays(PlanProblem problem, int[] chosen, int[] bought, int[] done, IReadOnlyList<int?>? starts = null)
    {
        var units = problem.Places.SelectMany((place, index) => chosen[index] < 0 ? [] : place.Choices[chosen[index]].Uses
            .SelectMany(use => Enumerable.Repeat((Place: index, use.Product), use.Pieces))).ToList();
        var left = new Dictionary<(int Day, int Product), int>();
        void Put(int day, int product, int pieces) => left[(day, product)] = left.GetValueOrDefault((day, product)) + pieces;
        for (var product = 0; product < problem.Products.Count; product++)
        {
            Put(0, product, problem.Products[product].InHand);
        }

        foreach (var (offer, count) in problem.Offers.Zip(bought).Where(line => line.Second > 0))
        {
            offer.Holds.ToList().ForEach(held => Put(offer.ArrivesOn, held.Product, held.Pieces * count));
        }

        var least = int.MaxValue;
        var ready = new int[problem.Places.Count];
        Assign(0);
        return least;

        void Assign(int unit)
        {
            if (unit == units.Count)
            {
                least = int.Min(least, starts is null ? InBestOrder(problem, done, ready) : AsStarted(problem, ready, starts));
                return;
            }

            var (place, product) = units[unit];
            foreach (var source in left.Where(source => source.Key.Product == product && source.Value > 0).Select(source => source.Key).ToList())
            {
                var before = ready[place];
                ready[place] = int.Max(before, source.Day);
                left[source]--;
                Assign(unit + 1);
                left[source]++;
                ready[place] = before;
            }
        }
    }

    private static int InBestOrder(PlanProblem problem, int[] done, int[] ready)
    {
        var work = Enumerable.Range(0, done.Length).Where(job => done[job] == 1).ToList();
        var least = int.MaxValue;
        foreach (var order in Orders(work))
        {
            var ends = new Dictionary<int, int>();
            foreach (var job in order)
            {
                var (it, start) = (problem.Jobs[job], 0);
                start = it.NeedsPlaces.Select(place => ready[place]).Append(start).Max();
                start = ends.Where(end => it.AfterJobs.Contains(end.Key)).Select(end => end.Value + Comes(problem.Jobs[end.Key], ready)).Append(start).Max();
                start = ends.Where(end => MayNotOverlap(it, problem.Jobs[end.Key])).Select(end => end.Value).Append(start).Max();
                ends[job] = start + it.Days;
            }

            if (order.All(job => problem.Jobs[job].AfterJobs.Where(work.Contains).All(before => order.IndexOf(before) < order.IndexOf(job))))
            {
                least = int.Min(least, ends.Select(end => end.Value + Comes(problem.Jobs[end.Key], ready)).Concat(ready).Max());
            }
        }

        return least;
    }

    private static int AsStarted(PlanProblem problem, int[] ready, IReadOnlyList<int?> starts)
    {
        var end = ready.Max();
        for (var job = 0; job < starts.Count; job++)
        {
            if (starts[job] is not { } start)
            {
                continue;
            }

            var it = problem.Jobs[job];
            end = int.Max(end, start + it.Days + Comes(it, ready));
            var isEarly = it.NeedsPlaces.Any(place => ready[place] > start)
                || it.AfterJobs.Any(before => starts[before] + problem.Jobs[before].Days + Comes(problem.Jobs[before], ready) > start);
            var overlaps = Enumerable.Range(0, starts.Count).Any(other => other != job && MayNotOverlap(it, problem.Jobs[other])
                && starts[other] < start + it.Days && start < starts[other] + problem.Jobs[other].Days);
            if (isEarly || overlaps)
            {
                return int.MaxValue;
            }
        }

        return end;
    }

    /// <summary>What is ordered only when the job is done takes as long again as it takes to come.</summary>
    private static int Comes(PlanJob job, int[] ready) => job.Orders is { } place ? ready[place] : 0;

    private static bool MayNotOverlap(PlanJob one, PlanJob other) => one.Days > 0 && other.Days > 0 && one.HoldsPlaces.Any(other.HoldsPlaces.Contains);

    private static IEnumerable<PlanChoice> Chosen(PlanProblem problem, int[] chosen) =>
        problem.Places.Zip(chosen).Where(pair => pair.Second >= 0).Select(pair => pair.First.Choices[pair.Second]);

    private static IEnumerable<int[]> Choose(IEnumerable<(int Least, int Most)> ranges) =>
        ranges.Aggregate((IEnumerable<int[]>)[[]], (all, range) =>
            all.SelectMany(begun => Enumerable.Range(range.Least, range.Most - range.Least + 1), (begun, next) => begun.Append(next).ToArray()));

    private static IEnumerable<List<int>> Orders(List<int> all) =>
        all.Count == 0 ? [[]] : all.SelectMany(first => Orders([.. all.Where(other => other != first)])
            .Select(rest => new List<int> { first }.Concat(rest).ToList()));
}

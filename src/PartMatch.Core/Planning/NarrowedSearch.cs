namespace PartMatch.Core.Planning;

/// <summary>The least of a sum in a large model: sought first where the linear relaxation says it must be, and proven there.</summary>
internal static class NarrowedSearch
{
    /// <param name="from">Models with fewer variables that can vary are searched as they are.</param>
    public static ConstraintAnswer Minimise(
        ConstraintModel model, LinearSum sum, IReadOnlyList<long> begin, int from, double work, Action<long?, long>? told, CancellationToken stop)
    {
        var before = model.Ranges.ToArray();
        if (Varying(before) < from
            || LinearRelaxation.Worths(model.Rows, before, sum, work, stop) is not { } worths
            || DualBound.Of(model.Rows, before, sum, worths) is not { } bound)
        {
            return Search(model, sum, begin, work, told, stop);
        }

        var count = int.Max(from, Varying(before) / 10);
        var best = long.MaxValue;
        var left = work;
        while (true)
        {
            // Twice as much each time, until the best there is lies within what was looked at, or nearly everything was.
            var most = long.Min(best, bound.Leaving(count));
            var narrowed = bound.Within(most);
            var isWhole = Varying(narrowed) > Varying(before) * 3 / 4;
            model.Narrow(isWhole ? before : narrowed);
            var answer = Search(model, sum, begin, left, told is null ? null : (found, atBest) => told(found, isWhole ? atBest : long.Min(atBest, most)), stop);
            model.Narrow(before);
            left = double.Max(left - answer.Work, 0);
            if (answer.Values.Count > 0)
            {
                (begin, best) = (answer.Values, long.Min(best, Value(sum, answer.Values)));
            }

            if (isWhole || best <= most || answer.Status is ConstraintStatus.Found or ConstraintStatus.NothingFound)
            {
                if (best < long.MaxValue)
                {
                    // What is better than this, or as good, is in there.
                    model.Narrow(bound.Within(best));
                }

                var known = isWhole ? answer.Bound : long.Min(answer.Bound, long.Max(most, bound.Least));
                var status = answer.Status == ConstraintStatus.NothingFound && best < long.MaxValue ? ConstraintStatus.Found : answer.Status;
                return new ConstraintAnswer(status, best < long.MaxValue ? begin : [], known, work - left);
            }

            count = 2 * int.Max(count, Varying(narrowed));
        }
    }

    public static long Value(LinearSum sum, IReadOnlyList<long> values) => sum.Constant + sum.Factors.Sum(factor => factor.Value * (factor.Key < values.Count ? values[factor.Key] : 0));

    public static ConstraintAnswer Search(ConstraintModel model, LinearSum sum, IReadOnlyList<long> begin, double work, Action<long?, long>? told, CancellationToken stop)
    {
        model.Minimise(sum);
        model.Begin(begin);
        return model.Solve(work, told, stop);
    }

    public static int Varying(IReadOnlyList<(long Least, long Most)> ranges) => ranges.Count(range => range.Least < range.Most);
}

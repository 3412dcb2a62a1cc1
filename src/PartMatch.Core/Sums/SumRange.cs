using PartMatch.Core.Measures;

namespace PartMatch.Core.Sums;

/// <summary>Carries the ranges of the inputs through a formula in which an input may stand more than once.</summary>
/// <remarks>
/// The formula must rise or fall with each input alone, wherever the others stand in their ranges: then its least and greatest value lie at
/// corners of the box (Moore, Interval Analysis, 1966, monotonicity). Where it turns inside a range, the caller splits the range there.
/// </remarks>
public static class SumRange
{
    /// <summary>Least, expected and greatest result: the worst cases, not a confidence interval.</summary>
    /// <param name="result">The formula; takes one number for each input, in their order.</param>
    public static Spread Of(IReadOnlyList<SumInput> inputs, Func<double[], double> result)
    {
        var expected = Expected(inputs);
        var (lowest, highest) = (Expected(inputs), Expected(inputs));
        for (var index = 0; index < inputs.Count; index++)
        {
            var spread = inputs[index].Spread;
            if (spread.IsExact)
            {
                continue;
            }

            var rises = At(expected, index, spread.Low, result) <= At(expected, index, spread.High, result);
            (lowest[index], highest[index]) = rises ? (spread.Low, spread.High) : (spread.High, spread.Low);
        }

        return new Spread(result(lowest), result(expected), result(highest));
    }

    /// <summary>What each input that has a range does alone, the greatest change first; of equal ones the earlier input first.</summary>
    /// <param name="show">A result as text with its unit.</param>
    public static IReadOnlyList<Influence> Influences(IReadOnlyList<SumInput> inputs, Func<double[], double> result, Func<double, string> show)
    {
        var expected = Expected(inputs);
        return
        [
            .. inputs
                .Select((input, index) => (input, index))
                .Where(one => !one.input.Spread.IsExact)
                .Select(one =>
                {
                    var (low, high) = (At(expected, one.index, one.input.Spread.Low, result), At(expected, one.index, one.input.Spread.High, result));
                    return new Influence(one.input.Name, low, high, InWords(one.input.Name, show(low), show(high), falls: high < low));
                })
                .Where(influence => influence.Change > 0)
                .OrderByDescending(influence => influence.Change),
        ];
    }

    private static string InWords(string name, string low, string high, bool falls) => low == high ? $"{name}: hardly moves it, {low} either way"
        : falls ? $"{name}: alone from {low} at its least down to {high} at its most"
        : $"{name}: alone from {low} to {high}";

    private static double[] Expected(IReadOnlyList<SumInput> inputs) => [.. inputs.Select(input => input.Spread.Expected)];

    private static double At(double[] expected, int index, double value, Func<double[], double> result)
    {
        var moved = (double[])expected.Clone();
        moved[index] = value;
        return result(moved);
    }
}

namespace PartMatch.Core.Planning;

/// <summary>What a sum is at least, and how far each variable can be from its best end in a solution that is good enough: exact, from worths that are only nearly right.</summary>
/// <remarks>
/// Any worths of rows give a bound (weak duality): the sum is what is left of each factor after the rows' worths, at each variable's best end, plus each row at its bound.
/// Worths are rounded to fractions of a power of two, and everything is whole numbers from there on. Source: G. L. Nemhauser, L. A. Wolsey, Integer and Combinatorial
/// Optimization, 1988, II.1.2 and II.5.1 (bounds by duality, fixing by reduced cost; from memory).
/// </remarks>
internal sealed class DualBound
{
    private const int Scale = 1 << 20;

    private readonly (long Least, long Most)[] _ranges;
    private readonly Int128[] _left;
    private readonly Int128 _scaled;

    private DualBound(IReadOnlyList<LinearRow> rows, IReadOnlyList<(long Least, long Most)> ranges, LinearSum sum, IReadOnlyList<double> worths)
    {
        checked
        {
            _ranges = [.. ranges];
            _left = new Int128[_ranges.Length];
            _scaled = (Int128)sum.Constant * Scale;
            foreach (var (variable, factor) in sum.Factors)
            {
                _left[variable] = (Int128)factor * Scale;
            }

            for (var row = 0; row < rows.Count; row++)
            {
                var worth = double.IsFinite(worths[row]) && double.Abs(worths[row]) < 1e15 ? (Int128)double.Round(worths[row] * Scale) : 0;
                var at = worth > 0 ? rows[row].Least : rows[row].Most;
                if (worth == 0 || at is long.MinValue or long.MaxValue)
                {
                    continue;
                }

                _scaled += worth * at;
                for (var term = 0; term < rows[row].Variables.Length; term++)
                {
                    _left[rows[row].Variables[term]] -= worth * rows[row].Factors[term];
                }
            }

            for (var variable = 0; variable < _left.Length; variable++)
            {
                _scaled += _left[variable] * (_left[variable] > 0 ? _ranges[variable].Least : _ranges[variable].Most);
            }

            Least = (long)(_scaled / Scale) + (_scaled > 0 && _scaled % Scale != 0 ? 1 : 0);
        }
    }

    /// <returns>Null where the worths are too large to reckon with.</returns>
    public static DualBound? Of(IReadOnlyList<LinearRow> rows, IReadOnlyList<(long Least, long Most)> ranges, LinearSum sum, IReadOnlyList<double> worths)
    {
        try
        {
            return new DualBound(rows, ranges, sum, worths);
        }
        catch (OverflowException)
        {
            return null;
        }
    }

    /// <summary>No solution is below this.</summary>
    public long Least { get; }

    /// <summary>Where every solution that comes to at most so much has its variables.</summary>
    public (long Least, long Most)[] Within(long most)
    {
        var slack = ((Int128)most * Scale) - _scaled;
        var within = new (long Least, long Most)[_ranges.Length];
        for (var variable = 0; variable < within.Length; variable++)
        {
            var (least, end) = _ranges[variable];
            var far = _left[variable] == 0 ? end - least : Int128.Min(end - least, Int128.Max(0, slack) / Int128.Abs(_left[variable]));
            within[variable] = _left[variable] > 0 ? (least, least + (long)far) : (end - (long)far, end);
        }

        return within;
    }

    /// <summary>A value within which about this many variables can still vary.</summary>
    public long Leaving(int count)
    {
        var steps = _left.Where((left, variable) => left != 0 && _ranges[variable].Least < _ranges[variable].Most).Select(Int128.Abs).Order().ToList();
        var unmoved = _left.Where((left, variable) => left == 0 && _ranges[variable].Least < _ranges[variable].Most).Count();
        return steps.Count == 0 ? Least : long.Max(Least, (long)((_scaled + steps[int.Clamp(count - unmoved, 0, steps.Count - 1)]) / Scale));
    }
}

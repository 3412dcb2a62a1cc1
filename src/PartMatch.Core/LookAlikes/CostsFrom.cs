namespace PartMatch.Core.LookAlikes;

/// <summary>The costs of reading other keys for one that was meant: what depends on that key alone is worked out once for all of them.</summary>
/// <remarks>
/// The same sums in the same order as <see cref="MixUpCost.Between"/>, only near the diagonal and without the way. A way that leaves the diagonal by more than
/// <see cref="Band"/> places comes back or ends within two of it: six lost or added characters at least. Where the cheapest near the diagonal costs as much, the whole is asked.
/// </remarks>
internal sealed class CostsFrom
{
    /// <summary>No two keys whose folded keys are two edits apart cost less: two characters swapped across a third, or two substitutions at 5.5 each.</summary>
    public const double LeastOfTwoEdits = 9.4;

    private const int Band = 3;
    private const int Width = (2 * Band) + 1;
    private const char FirstLetter = '0';
    private const char LastLetter = 'Z';
    private const int Letters = LastLetter - FirstLetter + 1;
    private const double OutsideBand = 45; // six times 7.6, the cheapest lost or added character
    private const double LostAndAdded = 15; // twice 7.6

    private static readonly int _stepsAtAPlace = Letters + Enum.GetValues<MixUpClass>().Length;
    private readonly string _meant;
    private readonly double[] _omission;
    private readonly double[] _addition;
    private readonly double[] _across;
    private readonly List<MixUpStep> _steps = [];
    private double[] _cost = new double[Width * 20];

    public CostsFrom(string meant)
    {
        _meant = meant;
        (_omission, _addition, _across) = (new double[meant.Length + 1], new double[meant.Length + 1], new double[meant.Length * _stepsAtAPlace]);
        Array.Fill(_across, double.NaN);
        for (var from = 0; from <= meant.Length; from++)
        {
            _omission[from] = MixUpCost.StepCost(new MixUpStep(MixUpClass.Omission, 1, 0), meant, from, "", 0);
            _addition[from] = MixUpCost.StepCost(new MixUpStep(MixUpClass.Addition, 0, 1), meant, from, "", 0);
        }
    }

    /// <summary>The cost of <see cref="MixUpCost.Between"/> for a single pair.</summary>
    public static double Between(string meant, string read) =>
        PlaceOfOneSubstitution(meant, read) is { } place && FoldingClasses.Fold(meant[place]) != FoldingClasses.Fold(read[place])
        && MixUpCost.StepCost(MixUpStep.Substitution, meant, place, read, place) is < LostAndAdded and var cost
            ? MixUpCost.Rounded(cost)
            : new CostsFrom(meant).To(read);

    /// <summary>The cost of <see cref="MixUpCost.Between"/>.</summary>
    public double To(string read) =>
        Math.Abs(_meant.Length - read.Length) > 2 || FoldingClasses.IsSameFolded(_meant, read)
        || (OneSubstitution(read) ?? Cheapest(read)) is not (< OutsideBand and var cost)
            ? MixUpCost.Between(_meant, read).Cost
            : MixUpCost.Rounded(cost);

    private double? OneSubstitution(string read) =>
        PlaceOfOneSubstitution(_meant, read) is { } place && StepCost(MixUpStep.Substitution, place, read, place) is < LostAndAdded and var cost ? cost : null;

    // Most of what is near differs at one place. What else leads there loses a character and adds one: every other step changes two places.
    private static int? PlaceOfOneSubstitution(string meant, string read)
    {
        if (meant.Length != read.Length || meant == read)
        {
            return null;
        }

        var place = meant.AsSpan().CommonPrefixLength(read);
        return meant.AsSpan(place + 1).SequenceEqual(read.AsSpan(place + 1)) ? place : null;
    }

    private double Cheapest(string read)
    {
        if (_cost.Length < (_meant.Length + 4) * Width)
        {
            _cost = new double[(_meant.Length + 4) * Width];
        }

        Array.Fill(_cost, double.PositiveInfinity);
        for (var from = _meant.Length; from >= 0; from--)
        {
            for (var to = Math.Min(read.Length, from + Band); to >= Math.Max(0, from - Band); to--)
            {
                _cost[Cell(from, to)] = CostOf(read, from, to);
            }
        }

        return _cost[Cell(0, 0)];
    }

    private double CostOf(string read, int from, int to)
    {
        var (left, other) = (from < _meant.Length, to < read.Length);
        if (!left && !other)
        {
            return 0;
        }

        var cost = double.PositiveInfinity;
        if (left && other)
        {
            cost = _meant[from] == read[to] ? _cost[Cell(from + 1, to + 1)] : Across(read, from, to);
        }

        if (left && from - to < Band)
        {
            cost = Math.Min(cost, _omission[from] + _cost[Cell(from + 1, to)]);
        }

        return other && to - from < Band ? Math.Min(cost, _addition[from] + _cost[Cell(from, to + 1)]) : cost;
    }

    private double Across(string read, int from, int to)
    {
        var cost = StepCost(MixUpStep.Substitution, from, read, to) + _cost[Cell(from + 1, to + 1)];
        _steps.Clear();
        MixUpStep.CollectAcross(_meant.AsSpan(from), read.AsSpan(to), _steps);
        foreach (var step in _steps)
        {
            cost = Math.Min(cost, StepCost(step, from, read, to) + _cost[Cell(from + step.Meant, to + step.Read)]);
        }

        return cost;
    }

    // The same few steps come up for key after key, and each takes a logarithm.
    private double StepCost(MixUpStep step, int from, string read, int to)
    {
        var kind = step.Class != MixUpClass.Substitution ? Letters + (int)step.Class
            : read[to] is >= FirstLetter and <= LastLetter and var letter ? letter - FirstLetter
            : -1;
        if (kind < 0)
        {
            return MixUpCost.StepCost(step, _meant, from, read, to);
        }

        ref var known = ref _across[(from * _stepsAtAPlace) + kind];
        return double.IsNaN(known) ? known = MixUpCost.StepCost(step, _meant, from, read, to) : known;
    }

    private static int Cell(int from, int to) => (from * Width) + (to - from + Band);
}

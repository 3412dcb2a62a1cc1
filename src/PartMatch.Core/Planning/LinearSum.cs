namespace PartMatch.Core.Planning;

/// <summary>A sum of whole multiples of variables, each variable once.</summary>
internal sealed class LinearSum
{
    private readonly Dictionary<int, long> _factors = [];

    public long Constant { get; private set; }

    /// <summary>In the order in which they came: the order of a model is part of its answer.</summary>
    public IReadOnlyDictionary<int, long> Factors => _factors;

    public LinearSum Add(long constant)
    {
        Constant += constant;
        return this;
    }

    /// <param name="variable">A variable, or a negated flag: 1 - flag.</param>
    public LinearSum Add(int variable, long factor)
    {
        if (variable < 0)
        {
            Constant += factor;
            return Add(ConstraintModel.Not(variable), -factor);
        }

        if (factor != 0)
        {
            _factors[variable] = _factors.GetValueOrDefault(variable) + factor;
        }

        return this;
    }

    public LinearSum Add(LinearSum other, long factor = 1)
    {
        Constant += other.Constant * factor;
        foreach (var (variable, times) in other._factors)
        {
            Add(variable, times * factor);
        }

        return this;
    }
}

using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>A number whose key is near the key asked about.</summary>
/// <remarks>Hundreds can be near and a page shows twenty: what does not order them is worked out when it is read.</remarks>
public sealed class NearNumber
{
    private readonly string _asked;
    private readonly CostsFrom? _costs;
    private double _cost = double.NaN;
    private MixUp? _mixUp;

    /// <param name="costs">Of the asked key, where more numbers are held against it.</param>
    internal NearNumber(PartNumber number, string asked, int foldedEdits, CostsFrom? costs = null)
    {
        (Number, _asked, FoldedEdits, _costs) = (number, asked, foldedEdits, costs);
    }

    public PartNumber Number { get; }

    /// <summary>Optimal string alignment distance of the folded keys; within the limit.</summary>
    public int FoldedEdits { get; }

    /// <summary>The cost of <see cref="MixUp"/>.</summary>
    /// <remarks>The first reading takes what is shared by all that were found with it: one reader at a time, until <see cref="Settle"/>.</remarks>
    public double Cost => double.IsNaN(_cost) ? _cost = _costs?.To(Number.Key) ?? CostsFrom.Between(_asked, Number.Key) : _cost;

    /// <summary>Works out what it costs, so that several may read it at once.</summary>
    internal void Settle() => _ = Cost;

    /// <summary>Optimal string alignment distance of the keys as they are.</summary>
    public int Edits => NumberDistance.OptimalStringAlignment(_asked, Number.Key);

    /// <summary>How the asked key is taken for this one.</summary>
    public MixUp MixUp => _mixUp ??= MixUpCost.Between(_asked, Number.Key);

    /// <summary>By cost, then key, then part.</summary>
    internal static IComparer<NearNumber> InOrder { get; } = Comparer<NearNumber>.Create((one, other) =>
        one.Cost != other.Cost ? one.Cost.CompareTo(other.Cost)
        : string.CompareOrdinal(one.Number.Key, other.Number.Key) is not 0 and var byKey ? byKey
        : string.CompareOrdinal(one.Number.Part, other.Number.Part));

    /// <summary>The same two numbers the other way round: this one was meant, the asked one read.</summary>
    internal NearNumber Reversed(PartNumber asked) => new(asked, Number.Key, FoldedEdits);
}

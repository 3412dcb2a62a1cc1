using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>One point of the rail pressure that a control unit sets, both gauge, Pa.</summary>
public sealed record RailPoint(decimal BoostPa, decimal RailPa)
{
    /// <summary>Rail pressure at a boost between two points, or null beyond them.</summary>
    /// <param name="table">Rising boost.</param>
    internal static double? At(IReadOnlyList<RailPoint> table, double boostPa)
    {
        for (var index = 0; index < table.Count; index++)
        {
            var (boost, rail) = ((double)table[index].BoostPa, (double)table[index].RailPa);
            if (boostPa == boost)
            {
                return rail;
            }

            if (boostPa < boost)
            {
                return index == 0 ? null : rail - ((rail - (double)table[index - 1].RailPa) * (boost - boostPa) / (boost - (double)table[index - 1].BoostPa));
            }
        }

        return null;
    }
}

/// <summary>The rail of a goal: what feeds it, at which pressure, against which boost.</summary>
/// <param name="PressurePa">As <see cref="FuelSupply"/> says for each supply; not looked at where there is a table.</param>
/// <param name="Table">What a control unit sets over boost; empty where the pressure is one figure.</param>
internal sealed record RailPressure(FuelSupply Supply, Quantity Pressure, Spread PressurePa, Spread BoostPa, IReadOnlyList<RailPoint> Table)
{
    private bool IsReferenced => Supply == FuelSupply.ReturnManifold;

    /// <summary>Rail − manifold at the goal, Pa.</summary>
    public Spread Across => Table.Count > 0 ? OverBoost(boost => (RailPoint.At(Table, boost) ?? 0) - boost) : IsReferenced ? PressurePa : PressurePa - BoostPa;

    /// <summary>Gauge pressure of the rail at the goal, Pa.</summary>
    public Spread Gauge => Table.Count > 0 ? OverBoost(boost => RailPoint.At(Table, boost) ?? 0) : IsReferenced ? PressurePa + BoostPa : PressurePa;

    /// <summary>A control unit sets the rail, and only what it sets at the goal is told.</summary>
    public bool IsKnownAtGoalOnly => Supply == FuelSupply.ReturnlessControlled && Table.Count == 0;

    /// <summary>Rail − manifold at another manifold pressure, Pa; null where nothing tells it.</summary>
    public Spread? AcrossAt(double boostPa) => Table.Count > 0
        ? RailPoint.At(Table, boostPa) is { } rail ? Spread.Exactly(rail - boostPa) : null
        : IsKnownAtGoalOnly && boostPa != BoostPa.Expected ? null
        : IsReferenced ? PressurePa : PressurePa - Spread.Exactly(boostPa);

    public WorkingStep Step()
    {
        var (pressure, boost, across) = (SumText.InBar(PressurePa.Expected), SumText.InBar(BoostPa.Expected), SumText.InBar(Across.Expected));
        if (Table.Count > 0)
        {
            return new("pressure across an injector", "rail at that boost, from the table given, − manifold; both gauge",
                $"{SumText.InBar(Gauge.Expected)} − {boost}", across, "the table of the question; straight between its points");
        }

        return IsReferenced
            ? new("pressure across an injector", "the regulator holds it over the manifold, whatever the boost", $"set {pressure}",
                $"{across}; the rail stands at {SumText.InBar(Gauge.Expected)} gauge", "Bosch Automotive Handbook, fuel-pressure regulator (from memory)")
            : new("pressure across an injector", "rail − manifold, both gauge; a loss in the line is not subtracted", $"{pressure} − {boost}", across,
                "definition");
    }

    // Straight between the points of the table: the extremes lie at the ends of the boost and at the points between them.
    private Spread OverBoost(Func<double, double> pascals)
    {
        var places = Table.Select(point => (double)point.BoostPa).Where(boost => boost > BoostPa.Low
            && boost < BoostPa.High).Append(BoostPa.Low).Append(BoostPa.High).Select(pascals).ToList();
        return new Spread(places.Min(), pascals(BoostPa.Expected), places.Max());
    }
}

using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>What boost does to the pressure across an injector, from the vacuum of idling to the goal.</summary>
internal static class PressureThrough
{
    private static readonly double[] _sharesOfBoost = [0.25, 0.5, 0.75, 1];

    public static IEnumerable<PressureAtBoost> Of(InjectorGoal goal)
    {
        var rail = goal.Rail;
        var boost = rail.BoostPa.Expected;
        double[] places = [IdleNeed.Manifold.Spread.Expected, 0, .. boost > 0 ? _sharesOfBoost.Select(share => share * boost) : []];
        foreach (var place in places)
        {
            // A table that does not reach there says nothing; nothing flows where the manifold pushes back as hard.
            if (rail.AcrossAt(place) is not { Low: > 0 } across)
            {
                continue;
            }

            var setting = rail.Table.Count > 0 ? rail.Gauge : rail.PressurePa;
            yield return new PressureAtBoost(
                new Quantity((decimal)place, "Pa", SumText.InBar(place)),
                Shown(across),
                Spread.Exactly(OrificeFlow.AtPressure(1, goal.AcrossPa.Expected, across.Expected)).In(SumText.Percent, "0.0"),
                Shown(setting),
                Shown((setting - Spread.Exactly(place)).NotNegative()));
        }
    }

    private static QuantityRange Shown(Spread pascals) => pascals.In(SumText.Bars, "0.00");
}

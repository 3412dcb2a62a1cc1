using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

/// <summary>Every input may be a range; the answer to the ranges holds the answer to every number in them.</summary>
public sealed class InjectorRangeTests
{
    private static readonly Gen<(double At, double Width)> Place = Gen.Select(Gen.Double[0, 1], Gen.Double[0, 0.1]);

    // Dead times that fall with voltage and rise with pressure, as they do.
    private static readonly CurvePoint[] Table =
    [
        Dead(10, 1, 1.5m), Dead(12, 1, 1.1m), Dead(16, 1, 0.7m), Dead(10, 3, 1.6m), Dead(12, 3, 1.2m), Dead(16, 3, 0.8m), Dead(10, 6, 1.9m),
            Dead(12, 6, 1.5m), Dead(16, 6, 1.0m),
    ];

    [Fact]
    public void No_number_inside_the_ranges_leads_outside_the_answer() => Gen.Select(Place, Place, Place, Place, Place, Place, Gen.Bool).Sample(
        (power, speed, boost, pressure, duty, voltage, referenced) =>
        {
            var ranged = HillClimb with
            {
                Supply = referenced ? FuelSupply.ReturnManifold : FuelSupply.ReturnAmbient,
                Power = Ranged(150_000, power, "W"),
                Speed = Ranged(6000, speed, "1/min"),
                Boost = Ranged(80_000, boost, "Pa"),
                Pressure = Ranged(380_000, pressure, "Pa"),
                Duty = Ranged(0.8, duty, "1"),
                Voltage = Ranged(13, voltage, "V"),
            };
            var inside = ranged with
            {
                // set just before
                Power = Inside(ranged.Power, power),
                Speed = Inside(ranged.Speed, speed),
                Boost = Inside(ranged.Boost, boost),
                Pressure = Inside(ranged.Pressure!, pressure),
                Duty = Inside(ranged.Duty, duty),
                Voltage = Inside(ranged.Voltage, voltage),
            };
            var injector = Injector("I-1", "620 cm3/min", deadTimes: Table);
            var (wide, one) = (Size(ranged, injector), Size(inside, injector));
            Holds(wide.NeedPerInjector.Mass, one.NeedPerInjector.Mass);
            Holds(wide.NeedPerInjector.RatedVolume, one.NeedPerInjector.RatedVolume);
            var (all, single) = (wide.Injectors[0], one.Injectors[0]);
            Holds(all.Flow, single.Flow);
            Holds(all.DeadTime, single.DeadTime);
            Holds(all.Duty, single.Duty);
            Holds(all.Pulse, single.Pulse);
            Holds(all.PowerAtDuty, single.PowerAtDuty);
            Holds(all.Shut, single.Shut);
        }, iter: 300);

    // 170 … 180 … 190 kW: 0.330 × 190 ÷ 180 = 1.0556 of the need at its high end; the power typed keeps its ends in what was asked.
    [Fact]
    public void Range_of_powers_is_carried_and_shown()
    {
        var ranged = HillClimb with { Power = ReadQuantity("170..180..190 kW", Dimension.Power) };
        var (one, wide) = (Size(HillClimb), Size(ranged));
        Near(one.NeedPerInjector.Mass.High * 190 / 180, wide.NeedPerInjector.Mass.High, 1e-12);
        Near(one.NeedPerInjector.Mass.Low * 170 / 180, wide.NeedPerInjector.Mass.Low, 1e-12);
        Near(one.NeedPerInjector.Mass.Expected, wide.NeedPerInjector.Mass.Expected, 1e-12);
        Assert.Equal((170_000m, 180_000m, 190_000m), (wide.Asked.Power.Low, wide.Asked.Power.Value, wide.Asked.Power.High));
        Assert.Equal((null, null), (one.Asked.Power.Low, one.Asked.Power.High));
    }

    // Consumption 300 … 380 around 330 moves the rating by (380 − 300) ÷ 330 = 24 %, dead time 0.6 … 1.5 ms by about 7 %, density 720 … 775 by under 4 %.
    [Fact]
    public void Inputs_that_matter_most_come_first()
    {
        var influences = Size(HillClimb with { Bsfc = ReadRange("300..330..380 g/(kW·h)", Dimension.SpecificConsumption) }).Influences;
        Assert.Equal(["specific consumption", "dead time", "density of the fuel"], influences.Select(one => one.Input));
        Assert.Equal("specific consumption: alone from 530 cm³/min to 671 cm³/min", influences[0].Text); // 582.8 × 300 ÷ 330 and × 380 ÷ 330
    }

    [Fact]
    public void Boost_has_an_influence_only_where_it_takes_pressure_away()
    {
        var boost = ReadQuantity("0.9..1.1..1.3 bar", Dimension.Pressure);
        Assert.DoesNotContain(Size(HillClimb with { Boost = boost }).Influences, one => one.Input == "boost");
        Assert.Contains(Size(HillClimb with { Boost = boost, Supply = FuelSupply.ReturnAmbient }).Influences, one => one.Input == "boost");
    }

    private static Quantity ReadQuantity(string text, Dimension dimension) => Assert.IsType<RangeRead>(QuantityRangeParser.Parse(text, dimension)).Quantity;

    private static Quantity Ranged(double middle, (double At, double Width) place, string unit) => new((decimal)middle, unit, $"{middle} {unit}")
    {
        Low = (decimal)(middle * (1 - place.Width)),
        High = (decimal)(middle * (1 + place.Width)),
    };

    private static Quantity Inside(Quantity ranged, (double At, double Width) place)
    {
        var (low, high) = ((double)(ranged.Low ?? 0), (double)(ranged.High ?? 0));
        return new Quantity((decimal)(low + ((high - low) * place.At)), ranged.Unit, "");
    }

    private static void Holds(QuantityRange? wide, QuantityRange? one)
    {
        Assert.NotNull(wide);
        Assert.NotNull(one);
        var slack = Math.Abs(wide.High) * 1e-9;
        Assert.True(wide.Low <= one.Low + slack && one.High <= wide.High + slack, $"{one.Text} outside {wide.Text}");
    }
}

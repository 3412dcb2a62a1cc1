using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

/// <summary>Source of the sum: ṁ = P × BSFC ÷ (n × D), the definition of specific consumption (Heywood 1988, section 2.8, from memory).</summary>
public sealed class InjectorNeedTests
{
    // 240 hp × 0.50 lb/(hp·h) = 120 lb/h; ÷ (4 × 0.80) = 37.50 lb/h each = 393.743 cm3/min at 720 kg/m3, 380.531 at 745.
    [Fact]
    public void Need_in_pounds_and_mechanical_horsepower()
    {
        var need = Size(Textbook("240 hp(I)", "0.50 lb/(hp(I)·h)", 4, "80 %")).NeedPerInjector;
        Near(37.50, In("lb/h", need.Mass.Expected), 1e-5);
        Near(393.743, In("cm3/min", need.Volume.High), 1e-5);
        Near(380.531, In("cm3/min", need.Volume.Expected), 1e-5);
    }

    // 300 hp × 0.55 = 165 lb/h; ÷ (6 × 0.85) = 32.35294 lb/h = 244.584 g/min.
    [Fact]
    public void Need_of_six_cylinders()
    {
        var need = Size(Textbook("300 hp(I)", "0.55 lb/(hp(I)·h)", 6, "85 %")).NeedPerInjector;
        Near(32.35294, In("lb/h", need.Mass.Expected), 1e-6);
        Near(244.584, In("g/min", need.Mass.Expected), 1e-5); // the source prints six digits
    }

    // 150 kW × 300 g/(kW·h) = 45.0 kg/h; ÷ (4 × 0.85) = 13 235.29 g/h = 220.588 g/min = 296.092 cm3/min at 745 kg/m3.
    // All four held open: 71.06 L/h; burnt at 150 kW: 45.0 ÷ 0.745 = 60.40 L/h.
    [Fact]
    public void Need_in_kilowatts()
    {
        var sized = Size(Textbook("150 kW", "300 g/(kW·h)", 4, "85 %"));
        var need = sized.NeedPerInjector;
        Near(13_235.29, In("g/min", need.Mass.Expected) * 60, 1e-6);
        Near(296.092, In("cm3/min", need.Volume.Expected), 2e-6);
        Near(71.06, In("L/h", need.Volume.Expected) * 4, 1e-3);
        Near(60.40, In("L/h", need.Volume.Expected) * 4 * 0.85, 1e-3);
        Assert.Equal("45.00 kg/h", sized.Working[0].Result);
    }

    // By hand, 180 kW at 6800/min, three injectors, 3.0 bar over the manifold, 85 %, BSFC 300 … 330 … 380, dead time 0.6 … 1.0 … 1.5 ms:
    //   cycle            120 000 ÷ 6800                              = 17.647 ms
    //                        least          expected        greatest
    //   fuel flow        180 × 0.300     180 × 0.330     180 × 0.380   = 54.00     59.40     68.40 kg/h
    //   dead share       0.6 ÷ 17.647    1.0 ÷ 17.647    1.5 ÷ 17.647  =  0.034     0.05667   0.085
    //   effective duty   0.85 − that                                   =  0.816     0.79333   0.765
    //   mass             flow × 1000 ÷ 60 ÷ 3 ÷ duty                   = 367.647   415.966   496.732 g/min
    //   volume           mass ÷ 0.775, 0.745, 0.720                    = 474.383   558.344   689.906 cm3/min
    //   rating           mass ÷ √(density × 0.6838), 3.00 ÷ 3.00 bar   = 505.028   582.795   707.932 cm3/min of n-heptane
    [Fact]
    public void Need_of_the_hill_climb_goal_as_by_hand()
    {
        var sized = Size(HillClimb with { Bsfc = ReadRange("300..330..380 g/(kW·h)", Dimension.SpecificConsumption) });
        var need = sized.NeedPerInjector;
        Is("g/min", need.Mass, 367.647, 415.966, 496.732);
        Is("cm3/min", need.Volume, 474.383, 558.344, 689.906);
        Is("cm3/min", need.RatedVolume, 505.028, 582.795, 707.932);
        Assert.Equal("505.0 … 582.8 … 707.9 cm³/min, n-heptane, 3.00 bar", need.RatedVolume.Text);
        Assert.Equal(new Quantity(300_000, "Pa", "3.00 bar"), sized.PressureAcross);
    }

    [Fact]
    public void The_working_shows_the_hand_sum_step_by_step()
    {
        var working = Size(HillClimb with { Bsfc = ReadRange("300..330..380 g/(kW·h)", Dimension.SpecificConsumption) }).Working;
        Assert.Equal(
            [
                "180 kW × 330 g/(kW·h) = 59.40 kg/h",
                "3 × 1 = 3",
                "120 000 ms/min ÷ 6800/min = 17.647 ms",
                "85 % − 1 × 1.00 ms ÷ 17.647 ms = 79.33 %",
                "set 3.00 bar = 3.00 bar; the rail stands at 4.10 bar gauge",
                "59.40 kg/h ÷ (3 × 79.33 %) × 1000 g/kg ÷ 60 min/h = 416.0 g/min",
                "416.0 g/min ÷ 0.7450 g/cm³ = 558.3 cm³/min",
                "416.0 g/min ÷ √(0.7450 × 0.6838) g/cm³ × √(3.00 bar ÷ 3.00 bar) = 582.8 cm³/min",
            ],
            working.Take(8).Select(step => $"{step.With} = {step.Result}"));
        Assert.Equal(["367.6 g/min", "505.0 cm³/min", "496.7 g/min", "707.9 cm³/min"], working.Skip(8).Select(step => step.Result));
        Assert.All(working, step => Assert.NotEmpty(step.Source));
    }

    // Rail 4.0 bar gauge fixed, 1.1 bar of boost: 2.9 bar across; the same mass asks for a rating √(3.0/2.9) = 1.017095 larger.
    [Fact]
    public void A_fixed_rail_under_boost_asks_for_a_larger_rating()
    {
        var question = HillClimb with { Pressure = Read("4.0 bar", Dimension.Pressure), Supply = FuelSupply.ReturnlessFixed };
        var (referenced, fixedRail) = (Size(HillClimb), Size(question));
        Assert.Equal("2.90 bar", fixedRail.PressureAcross.Text);
        Near(1.017095, fixedRail.NeedPerInjector.RatedVolume.Expected / referenced.NeedPerInjector.RatedVolume.Expected, 1e-6);
        Assert.Equal(referenced.NeedPerInjector.Mass, fixedRail.NeedPerInjector.Mass);
    }

    [Fact]
    public void What_was_filled_in_is_said()
    {
        var sized = Assert.IsType<InjectorsSized>(InjectorSizing.Size(HillClimb, [], [Count("ts", "cylinders", 3)]));
        Assert.Equal(["bsfc", "density", "dead-time", "rated-density", "duty", "voltage", "injectors-per-cylinder", "shots"], sized.Assumed.Select(assumption => assumption.Name));
        Assert.Equal((3, 1, 1, 0.85m, "14 V"), (sized.Asked.Cylinders, sized.Asked.InjectorsPerCylinder, sized.Asked.Shots, sized.Asked.Duty, sized.Asked.Voltage.Text));
        Assert.Equal(("1.10 bar over ambient", "3.00 bar"), (sized.Asked.Boost.Text, sized.Asked.Pressure.Text));
        Assert.Equal("43.5 psi (3.00 bar)", Size(HillClimb with { Pressure = Read("43.5 psi", Dimension.Pressure) }).Asked.Pressure.Text);
    }

    // Two injectors with two squirts each in two cylinders: 0.85 − 2 × 1.0 ÷ 17.647 = 0.736667 (the cart's way of injecting).
    [Fact]
    public void Counts_come_from_the_question_then_from_the_variant()
    {
        IReadOnlyList<EngineFact> cart = [Count("ts", "cylinders", 2), Count("ts", "injectors-per-cylinder", 2), Count("ts", "shots-per-cycle", 2), Count("other", "cylinders", 8)];
        var asBuilt = Assert.IsType<InjectorsSized>(InjectorSizing.Size(HillClimb, [], cart));
        Assert.Equal((2, 2, 2), (asBuilt.Asked.Cylinders, asBuilt.Asked.InjectorsPerCylinder, asBuilt.Asked.Shots));
        Assert.Equal("73.67 %", asBuilt.Working.First(step => step.What == "effective duty").Result);
        var asAsked = Assert.IsType<InjectorsSized>(InjectorSizing.Size(HillClimb with { Cylinders = 4, InjectorsPerCylinder = 1, Shots = 1 }, [], cart));
        Assert.Equal((4, 1, 1), (asAsked.Asked.Cylinders, asAsked.Asked.InjectorsPerCylinder, asAsked.Asked.Shots));
    }

    [Fact]
    public void A_fact_on_retracted_evidence_does_not_count()
    {
        var retracted = Count("ts", "cylinders", 3) with { Evidence = Source("ev-0002", EvidenceGrade.MakersDocument, "2026-03") };
        Assert.Equal("cylinders-not-recorded", Assert.IsType<SumRefused>(InjectorSizing.Size(HillClimb, [], [retracted])).Code);
    }

    private static void Is(string unit, QuantityRange range, double low, double expected, double high)
    {
        Near(low, In(unit, range.Low), 2e-6);
        Near(expected, In(unit, range.Expected), 2e-6);
        Near(high, In(unit, range.High), 2e-6);
    }
}

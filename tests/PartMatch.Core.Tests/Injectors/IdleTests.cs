using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

/// <summary>Source of the flow: 0.16 gal(US)/h of a 2.0 L and 0.39 gal(US)/h of a 4.6 L car, US DOE Vehicle Technologies Fact 861, 2015.</summary>
public sealed class IdleTests
{
    private static readonly InjectorQuestion Goal = HillClimb with
    {
        Displacement = Read("1600.2 cm3", Dimension.Volume),
        IdleSpeed = Read("850/min", Dimension.Speed)
    };

    // 0.16 × 3.785411784 ÷ 2.0 = 0.3028 and 0.39 × 3.785411784 ÷ 4.6 = 0.3209 L/h for each litre.
    [Fact]
    public void Published_idle_flow_is_three_tenths_of_a_litre_an_hour_for_each_litre()
    {
        Near(0.3028, 0.16 * 3.785411784 / 2.0, 1e-3);
        Near(0.3209, 0.39 * 3.785411784 / 4.6, 1e-3);
        var flow = IdleNeed.PetrolPerDisplacement.Spread * 3600;
        Near(0.30, flow.Low, 1e-12);
        Assert.InRange(0.3209, flow.Low, flow.Expected);
    }

    // By hand: 0.45 × 1.6002 L × 850 ÷ 700 × 0.745 kg/L = 0.65142 kg/h; least 0.30 and 43.0 ÷ 43.44: 0.42988 kg/h. Cycle 120 ÷ 850 = 141.18 ms.
    // One squirt of three: 0.65142 ÷ 3.6 g/s × 141.18 ms ÷ 3 = 8.515 mg, least 5.619 mg. Injector of 860: 613.82 g/min = 10.230 mg/ms, at most 10.434.
    // Pulse 8.515 ÷ 10.230 + 1.05 = 1.8824 ms; least 5.619 ÷ 10.434 + 1.05 = 1.5886 ms.
    [Fact]
    public void Squirt_at_idle_as_by_hand()
    {
        var sized = Size(Goal, Injector("I-8601", "860 cm3/min", deadTimes: Always(1.05m)));
        Near(0.65142, In("kg/h", sized.Idle!.FuelFlow.Expected), 1e-4); // displacement and idle speed are given
        Near(8.515e-6, sized.Idle.PerSquirt.Expected, 1e-4);
        var pulse = sized.Injectors[0].Idle!.Pulse!; // its table reaches everywhere
        Near(0.0018824, pulse.Expected, 1e-4);
        Near(0.0015886, pulse.Low, 1e-4);
    }

    [Theory]
    [InlineData("1.58 ms", Controllable.Yes)]
    [InlineData("1.59 ms", Controllable.NotKnown)]
    [InlineData("1.88 ms", Controllable.NotKnown)]
    [InlineData("1.89 ms", Controllable.No)]
    public void Squirt_is_held_against_the_straight_line(string smallest, Controllable expected)
    {
        var injector = Injector("I-8601", "860 cm3/min", deadTimes: Always(1.05m), more: Value("smallest-linear-pulse", smallest, Dimension.Time));
        Assert.Equal(expected, Judge(Goal, injector).Idle?.Controllable);
    }

    // E85 is sized on its richest and checked at idle on its leanest blend: least flow is that of petrol × 43.0 ÷ 34.55, expected × 43.0 ÷ 29.20.
    [Fact]
    public void Leanest_blend_counts_at_idle()
    {
        var (petrol, e85) = (Size(Goal).Idle, Size(Goal with { Fuel = "e85" }).Idle);
        Near(petrol!.FuelFlow.Low * 43.44 / 43.0 * 43.0 / 34.55, e85!.FuelFlow.Low, 1e-9); // petrol's own low end is on 43.44 MJ/kg
        Near(petrol.FuelFlow.Expected * 43.0 / 29.20, e85.FuelFlow.Expected, 1e-9);
    }

    // Two squirts a cycle halve each squirt, two injectors for each cylinder do too.
    [Fact]
    public void More_squirts_make_each_one_smaller()
    {
        var one = Size(Goal).Idle!.PerSquirt; // given, as above
        Near(one.Expected / 2, Size(Goal with { Shots = 2 }).Idle!.PerSquirt.Expected, 1e-12);
        Near(one.Expected / 2, Size(Goal with { InjectorsPerCylinder = 2 }).Idle!.PerSquirt.Expected, 1e-12);
    }

    // A rail at 3.5 bar over ambient has 3.5 + 0.56 … 0.71 bar across at idle: a table that ends at 4.0 bar says nothing there.
    [Fact]
    public void Table_that_does_not_reach_the_vacuum_leaves_idle_open()
    {
        var question = Goal with { Supply = FuelSupply.ReturnlessFixed, Pressure = Read("3.5 bar", Dimension.Pressure) };
        CurvePoint[] table = [Dead(14, 2, 0.9m), Dead(14, 4, 1.0m)];
        var idle = Judge(question, Injector("I-1", "860 cm3/min", deadTimes: table)).Idle;
        Assert.Equal(Controllable.NotKnown, idle?.Controllable);
        Assert.Contains("does not reach 4.06 … 4.16 … 4.21 bar across", idle?.Because, StringComparison.Ordinal);
        Assert.NotNull(Judge(question with { IdleManifold = ReadRange("-0.4 bar", Dimension.Pressure) },
            Injector("I-1", "860 cm3/min", deadTimes: table)).Idle?.Pulse);
    }

    [Fact]
    public void What_is_not_recorded_is_named()
    {
        var judged = Judge(HillClimb, Injector("I-1", "860 cm3/min"));
        Assert.Contains("displacement=", judged.Idle?.Because, StringComparison.Ordinal);
        Assert.Contains("idle-speed=", Judge(Goal with { IdleSpeed = null }, Injector("I-1", "860 cm3/min")).Idle?.Because, StringComparison.Ordinal);
        Assert.Null(Size(HillClimb).Idle);
    }
}

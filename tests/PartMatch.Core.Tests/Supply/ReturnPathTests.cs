using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Supply;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;
using static PartMatch.Core.Tests.Supply.SupplyExamples;

namespace PartMatch.Core.Tests.Supply;

/// <summary>
/// A rail held at 4.3 bar over ambient, 0.2 bar lost on the way at 152 L/h: the pump of 165 L/h at 4.0 bar and 152 at 4.5 gives 152 at idle. Petrol of 1.6 L at 850/min:
/// 0.45 L/h × 1.6 × 850 ÷ 700 = 0.874 L/h; 151.1 L/h flow back.
/// </summary>
public sealed class ReturnPathTests
{
    private static readonly SupplyQuestion AtAmbient = Ask(HillClimbGoal with
    {
        Boost = Read("0 bar", Dimension.Pressure),
        Supply = FuelSupply.ReturnAmbient,
        Pressure = Read("4.3 bar", Dimension.Pressure),
        Displacement = Read("1600 cm3", Dimension.Volume),
        IdleSpeed = Read("850/min", Dimension.Speed),
    }).Losing("0.2 bar", "152 L/h") with
    { Regulator = Regulator("4.30 bar", "ambient") };

    // At the expected idle 151.1 flow back, at the least burnt (0.30 L/h for a litre: 0.583) 151.4.
    [Theory]
    [InlineData("151.5 L/h", Enough.Yes)]
    [InlineData("151.2 L/h", Enough.NotKnown)]
    [InlineData("151.0 L/h", Enough.No)]
    public void Return_must_carry_what_idling_does_not_burn(string capacity, Enough expected)
    {
        var link = Back(AtAmbient with { ReturnCapacity = ReadRange(capacity, Dimension.VolumeFlow) });
        Assert.Equal(expected, link.Enough);
        Assert.Null(link.Power);
        Assert.Equal(("152.0 L/h − 0.9 L/h", "151.1 L/h"), (link.Working[0].With, link.Working[0].Result));
    }

    [Fact]
    public void Return_that_cannot_carry_it_lets_the_pressure_creep_up() => Assert.Contains(
        "the pressure creeps up at idle", Back(AtAmbient with { ReturnCapacity = ReadRange("90 L/h", Dimension.VolumeFlow) }).Because, StringComparison.Ordinal);

    [Fact]
    public void Capacity_that_nobody_recorded_is_said_to_be_not_known()
    {
        var link = Back(AtAmbient);
        Assert.Equal(Enough.NotKnown, link.Enough);
        Assert.StartsWith("Not known: what regulator and return line carry is not recorded; ", link.Because, StringComparison.Ordinal);
        Assert.Contains("give return-capacity=", link.Because, StringComparison.Ordinal);
        Assert.EndsWith("Not known: regulator, return.", Size(AtAmbient).FirstToGiveOut, StringComparison.Ordinal);
    }

    [Fact]
    public void Capacity_recorded_of_the_regulator_counts()
    {
        var regulator = Regulator("4.30 bar", "ambient").Passing("200 L/h");
        Assert.Equal((Enough.Yes, "harl:R-1"), (Back(AtAmbient with { Regulator = regulator }).Enough, Back(AtAmbient with { Regulator = regulator }).Part));
    }

    // 3.0 bar over a manifold of −0.66 bar and some 0.2 bar of line are 2.5 bar; the table begins at 4.0 bar with 165 L/h: at least 165 less what idles.
    [Theory]
    [InlineData("150 L/h", Enough.No)]
    [InlineData("300 L/h", Enough.NotKnown)]
    public void Pump_whose_table_begins_above_idle_gives_at_least_its_first_line(string capacity, Enough expected)
    {
        var question = Ask().Losing("0.2 bar", "152 L/h") with { ReturnCapacity = ReadRange(capacity, Dimension.VolumeFlow) };
        var link = Back(question);
        Assert.Equal(expected, link.Enough);
        Assert.Contains("at least 165 L/h must flow back at idle", link.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Pump_that_a_control_unit_slows_has_no_return() =>
        Assert.DoesNotContain(Size(Ask(HillClimbGoal with { Supply = FuelSupply.ReturnlessControlled })).Links, link => link.Link == "return");

    // 0.2 bar at 76 L/h are 0.8 at 152: at 4.8 bar it gives 143.6, where it would lose 0.71. With Q = 152 − 28 (p − 4.5) and p = 4.3 + 0.2 (Q ÷ 76)²:
    // Q = 157.6 − 0.00096953 Q², so Q = (√(1 + 4 × 0.00096953 × 157.6) − 1) ÷ (2 × 0.00096953) = 138.85 L/h; less 0.874 burnt: 138.0.
    [Fact]
    public void What_flows_at_idle_loses_what_that_very_flow_loses() =>
        Assert.Equal(("138.9 L/h − 0.9 L/h", "138.0 L/h"), (Back(AtAmbient.Losing("0.2 bar", "76 L/h")).Working[0].With, Back(AtAmbient.Losing("0.2 bar", "76 L/h")).Working[0].Result));

    private static SupplyLink Back(SupplyQuestion question) => Link(Size(question), "return");
}

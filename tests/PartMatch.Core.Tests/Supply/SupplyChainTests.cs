using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Plots;
using PartMatch.Core.Supply;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;
using static PartMatch.Core.Tests.Supply.SupplyExamples;

namespace PartMatch.Core.Tests.Supply;

public sealed class SupplyChainTests
{
    // Injectors of 550 carry 170.8 kW (InjectorJudgementTests), the pump 295.7 kW, the line 180 × √((8.0 − 4.1) ÷ 0.2) = 794.9 kW.
    [Fact]
    public void Link_that_carries_least_gives_out_first()
    {
        var sized = Size(Ask(), Pump);
        Assert.Equal(["injectors", "regulator", "return", "line", "pump"], sized.Links.Select(link => link.Link));
        Near(170_842, Link(sized, "injectors").Power!.Expected, 1e-4); // known, as above
        Near(295_740, Link(sized, "pump").Power!.Expected, 1e-4);
        Near(794_900, Link(sized, "line").Power!.Expected, 1e-4);
        Assert.Equal("The injectors give out first, at 145.9 … 170.8 … 191.7 kW; the goal is 180 kW.", sized.FirstToGiveOut);
        Assert.Equal([Enough.No, Enough.Yes, Enough.NotKnown, Enough.Yes, Enough.Yes], sized.Links.Select(link => link.Enough));
    }

    [Fact]
    public void Links_of_which_nothing_is_known_are_named()
    {
        var sized = Size(new SupplyQuestion(HillClimbGoal));
        Assert.Equal("Which link gives out first is not known. Not known: injectors, regulator, line, pump.", sized.FirstToGiveOut);
        Assert.All(sized.Links, link => Assert.Null(link.Power));
        Assert.Contains("pump=", Link(sized, "pump").Because, StringComparison.Ordinal);
    }

    [Fact]
    public void First_of_the_known_links_is_said_to_be_no_more_than_that()
    {
        var sized = Size(Ask() with { Injector = null });
        Assert.StartsWith("Of the links that are known the pump gives out first, at ", sized.FirstToGiveOut, StringComparison.Ordinal);
        Assert.EndsWith("Not known: injectors.", sized.FirstToGiveOut, StringComparison.Ordinal);
    }

    [Fact]
    public void Regulator_beside_a_rail_that_a_control_unit_sets_is_not_judged()
    {
        var controlled = Ask() with { Goal = HillClimbGoal with { Supply = FuelSupply.ReturnlessControlled }, Regulator = Regulator("3.00 bar", "manifold") };
        var link = Link(Size(controlled), "regulator");
        Assert.Equal(Enough.NotKnown, link.Enough);
        Assert.Contains("A control unit sets the rail", link.Because, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3.00 bar", "manifold", Enough.Yes)]
    [InlineData("3.05 bar", "manifold", Enough.Yes)] // ± 0.05 touches
    [InlineData("3.06 bar", "manifold", Enough.No)]
    [InlineData("3.00 bar", "ambient", Enough.No)]
    public void Regulator_must_hold_what_is_asked_against_what_is_asked(string set, string reference, Enough expected) =>
        Assert.Equal(expected, Link(Size(Ask() with { Regulator = Regulator(set, reference) }), "regulator").Enough);

    // 0.2 bar at the goal, 3.9 bar to spare: with no loss there is no limit of power.
    [Fact]
    public void Line_without_loss_has_no_limit_of_power()
    {
        var line = Link(Size(Ask() with { LineLoss = ReadRange("0 bar", Dimension.Pressure) }), "line");
        Assert.Equal((Enough.Yes, null), (line.Enough, line.Power));
    }

    // 8.0 bar of relief, rail 4.1: 4 bar of loss opens it.
    [Fact]
    public void Loss_that_opens_the_relief_valve_is_not_enough()
    {
        var line = Link(Size(Ask() with { LineLoss = ReadRange("4.0 bar", Dimension.Pressure) }), "line");
        Assert.Equal(Enough.No, line.Enough);
        Assert.True(line.Power!.Expected < 180_000); // a loss is given
    }

    // 4.1 bar on the rail and 5.0 of loss are 9.1 at the pump: beyond its table, which ends at 5.0, and beyond its relief valve of 8.0.
    [Fact]
    public void Pump_beyond_its_relief_valve_is_not_enough_whatever_its_table_reaches()
    {
        var pump = Link(Size(Ask() with { LineLoss = ReadRange("5.0 bar", Dimension.Pressure) }), "pump");
        Assert.Equal(Enough.No, pump.Enough);
        Assert.Contains("its relief valve is open", pump.Because, StringComparison.Ordinal);
        // 7.9 bar are below the valve and beyond the table: not known.
        Assert.Equal(Enough.NotKnown, Link(Size(Ask() with { LineLoss = ReadRange("3.8 bar", Dimension.Pressure) }), "pump").Enough);
    }

    [Fact]
    public void Rails_without_return_want_no_return()
    {
        var fixedRail = Size(Ask(HillClimbGoal with { Supply = FuelSupply.ReturnlessFixed, Pressure = Read("4.0 bar", Dimension.Pressure) }));
        Assert.Equal(fixedRail.Need.Burnt, fixedRail.Need.Wanted);
        Assert.Contains(fixedRail.Assumed, one => one.Name == "return" && one.Source.Contains("no return", StringComparison.Ordinal));
    }

    [Fact]
    public void Pump_is_drawn_over_pressure_with_its_numbers()
    {
        var plot = Assert.IsType<CurvePlot>(PumpPlot.Of(Size(Ask(), Pump), [Pump]));
        Assert.Equal(["harl:P-1"], plot.Lines.Select(line => line.Name));
        Assert.Equal(["4.00", "165.0"], plot.Table.Rows[0]);
        Assert.Contains(plot.Limits, limit => limit is { Direction: PlotDirection.Upright, At: > 4.299 and < 4.301 }); // 4.3 bar at the pump
        Assert.Contains(plot.Limits, limit => limit is { Direction: PlotDirection.Level, At: > 95.6 and < 95.8 }); // 95.7 L/h wanted
    }

    // Five unlike flows, four lines: the fitted one is last of the ranking and takes the fourth.
    [Fact]
    public void Injectors_that_the_maker_fitted_are_always_drawn()
    {
        var sized = Injectors.InjectorExamples.Size(HillClimbGoal, [.. new[] { "999", "860", "700", "620", "440" }.Select(flow => Injector($"I-{flow}", $"{flow} cm3/min"))]);
        sized = sized with
        {
            Injectors = [.. sized.Injectors.Select(one => one with
        {
            Fit = new InjectorFit(PartMatch.Core.Fit.Headline.Fits, PartMatch.Core.Fit.Sureness.Documented, "/api/fit") { IsFitted = one.Part == "harl:I-440" },
        })]
        };
        Assert.Equal(["harl:I-999", "harl:I-860", "harl:I-700", "harl:I-440"], Assert.IsType<CurvePlot>(InjectorPlots.Flow(sized)).Lines.Select(line => line.Name));
    }

    // The line of 550 at 3.0 bar is 392.6 g/min; duty at the goal 89.3 %, at no power the dead time's share 0.92 ÷ 17.647 = 5.2 %.
    [Fact]
    public void Injectors_are_drawn_over_pressure_and_over_power()
    {
        var sized = InjectorExamplesSized();
        var flow = Assert.IsType<CurvePlot>(InjectorPlots.Flow(sized));
        Assert.Equal(["3.0", "392.6"], flow.Table.Rows[4]);
        var duty = Assert.IsType<CurvePlot>(InjectorPlots.Duty(sized));
        Assert.Equal(["0", "5.2"], duty.Table.Rows[0]);
        Assert.Equal(["180", "89.3"], duty.Table.Rows[5]);
        var pressure = Assert.IsType<CurvePlot>(InjectorPlots.Pressure(sized));
        Assert.Equal(["1.10", "3.00", "3.00", "1.90", "100.0"], pressure.Table.Rows[^1]);

        static InjectorsSized InjectorExamplesSized() =>
            Injectors.InjectorExamples.Size(HillClimbGoal, Injector("I-5501", "550 cm3/min", deadTimes: Always(0.92m)));
    }
}

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
    // Injectors of 550 carry 170.8 kW (InjectorJudgementTests). 0.2 bar at 100 L/h opens the relief valve, 3.9 bar above the rail, at
    // 100 × √(3.9 ÷ 0.2) = 441.59 L/h; × 0.745 ÷ (0.330 × 1.2) = 830.8 kW. The pump meets that line where Q = 152 − 28 (p − 4.5) and p = 4.1 + 0.2 (Q ÷ 100)²:
    // Q = 163.2 − 0.00056 Q², so (√(1 + 4 × 0.00056 × 163.2) − 1) ÷ 0.00112 = 150.51 L/h at 4.553 bar: 283.2 kW.
    [Fact]
    public void Link_that_carries_least_gives_out_first()
    {
        var sized = Size(Ask().Losing("0.2 bar"), Pump);
        Assert.Equal(["injectors", "regulator", "return", "line", "pump"], sized.Links.Select(link => link.Link));
        Near(170_842, Link(sized, "injectors").Power!.Expected, 1e-4); // known, as above
        Near(283_163, Link(sized, "pump").Power!.Expected, 1e-4);
        Near(830_765, Link(sized, "line").Power!.Expected, 1e-4);
        Assert.Equal(
            "The chain is not enough: injectors. The injectors give out first, at 145.9 … 170.8 … 191.7 kW; the goal is 180 kW. Not known: regulator, return.",
            sized.FirstToGiveOut);
        Assert.Equal([Enough.No, Enough.NotKnown, Enough.NotKnown, Enough.Yes, Enough.Yes], sized.Links.Select(link => link.Enough));
    }

    // The same pipe, the same pump: what they carry hangs on no goal.
    [Theory]
    [InlineData("60 kW")]
    [InlineData("90 kW")]
    [InlineData("180 kW")]
    [InlineData("300 kW")]
    public void Limits_of_line_and_pump_are_the_same_whatever_goal_is_asked(string power)
    {
        var sized = Size(Ask(HillClimbGoal with { Power = Read(power, Dimension.Power) }).Losing("0.2 bar"), Pump);
        Near(830_765, Link(sized, "line").Power!.Expected, 1e-4); // as above
        Near(283_163, Link(sized, "pump").Power!.Expected, 1e-4);
    }

    [Fact]
    public void Line_of_which_no_loss_is_recorded_has_no_limit_that_is_known()
    {
        var line = Link(Size(Ask(), Pump), "line");
        Assert.Equal((Enough.NotKnown, null), (line.Enough, line.Power));
        Assert.StartsWith("Not known: its loss is not recorded. With the usual 0.10 … 0.20 … 0.40 bar at 100 L/h ", line.Because, StringComparison.Ordinal);
        Assert.Contains("line-loss-flow=", line.Because, StringComparison.Ordinal);
    }

    // Least: 0.4 bar at 100 L/h, Q = 163.2 − 0.00112 Q² = 140.95 L/h × 0.720 ÷ (0.380 × 1.3) = 205.4 kW.
    [Fact]
    public void Pump_beside_a_line_that_nobody_measured_meets_the_usual_loss_at_its_own_flow()
    {
        Near(283_163, Link(Size(Ask(), Pump), "pump").Power!.Expected, 1e-4); // as above
        Near(205_432, Link(Size(Ask(), Pump), "pump").Power!.Low, 1e-4);
    }

    // 0.5 bar at 100 L/h: at 5.0 bar, where its table ends, the pump gives 138 L/h, which lose 0.95 over a rail of 4.1. The goal it feeds at 4.56 bar.
    [Fact]
    public void Pump_whose_table_ends_before_it_meets_the_line_carries_nobody_knows_what()
    {
        var sized = Size(Ask().Losing("0.5 bar"), Pump);
        Assert.Equal((Enough.Yes, null), (Link(sized, "pump").Enough, Link(sized, "pump").Power));
        Assert.EndsWith("its table ends before its delivery meets the loss of the line.", Link(sized, "pump").Because, StringComparison.Ordinal);
        Assert.Contains("Of the links whose limit is known", sized.FirstToGiveOut, StringComparison.Ordinal);
    }

    // 240 kW want 102.2 … 127.6 … 164.7 L/h: 0.4 × 1.647² = 1.085 bar over 4.1 are beyond the table, which ends at 5.0. Pump and line meet at 140.9 … 150.5 … 156.1
    // (as above and in SupplySizingTests): more than is expected to be wanted, less than the most.
    [Fact]
    public void Pump_whose_table_ends_below_the_worst_pressure_is_judged_where_it_meets_the_line()
    {
        var pump = Link(Size(Ask(HillClimbGoal with { Power = Read("240 kW", Dimension.Power) }), Pump), "pump");
        Assert.Equal(Enough.NotKnown, pump.Enough);
        Near(283_163, pump.Power!.Expected, 1e-4); // as above
        Assert.Contains("pump and line meet at 140.9 … 150.5 … 156.1 L/h", pump.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Links_of_which_nothing_is_known_are_named()
    {
        var sized = Size(new SupplyQuestion(HillClimbGoal));
        Assert.Equal("Whether the chain is enough is not known. Which link gives out first is not known. Not known: injectors, regulator, return, line, pump.",
            sized.FirstToGiveOut);
        Assert.All(sized.Links, link => Assert.Null(link.Power));
        Assert.Contains("pump=", Link(sized, "pump").Because, StringComparison.Ordinal);
    }

    [Fact]
    public void First_of_the_known_links_is_said_to_be_no_more_than_that()
    {
        var sized = Size(Ask().Losing("0.2 bar") with { Injector = null });
        Assert.StartsWith("What is known of the chain is enough, even in the worst case. Of the links whose limit is known the pump gives out first, at ",
            sized.FirstToGiveOut, StringComparison.Ordinal);
        Assert.EndsWith("Not known: injectors, regulator, return.", sized.FirstToGiveOut, StringComparison.Ordinal);
    }

    // An injector of 800 carries 170.84 × 800 ÷ 550 = 248.5 kW, at best 278.8: the pump, at least 205.4, may give out before it.
    [Fact]
    public void Links_whose_ranges_overlap_are_named_together()
    {
        var sized = Size(Ask().Losing("0.1..0.2..0.4 bar") with { Injector = Injector("I-8001", "800 cm3/min", deadTimes: Always(0.92m)) }, Pump);
        Near(248_498, Link(sized, "injectors").Power!.Expected, 1e-4); // a full set
        Assert.Contains(
            "The injectors or the pump give out first, their ranges overlap: injectors at 212.", sized.FirstToGiveOut, StringComparison.Ordinal);
        Assert.Contains(" kW, pump at 205 … 283 … 367 kW; the goal is 180 kW.", sized.FirstToGiveOut, StringComparison.Ordinal);
    }

    // 157 L/h less 69.7 … 95.0 burnt pass the regulator at the goal; at idle, where the pump gives 184 … at 3.0 bar and below, all of it.
    [Fact]
    public void Chain_of_which_every_link_is_enough_is_said_to_be_so_first()
    {
        var sized = Size(Ask().Losing("0.2 bar") with
        {
            Goal = HillClimbGoal with { Power = Read("140 kW", Dimension.Power), Supply = FuelSupply.ReturnAmbient, Pressure = Read("4.3 bar", Dimension.Pressure) },
            Injector = Injector("I-8001", "800 cm3/min", deadTimes: Always(0.92m)),
            Regulator = Regulator("4.30 bar", "ambient").Passing("200 L/h"),
        }, Pump);
        Assert.All(sized.Links, link => Assert.Equal(Enough.Yes, link.Enough));
        Assert.StartsWith("The chain is enough, even in the worst case. The injectors or the pump give out first", sized.FirstToGiveOut, StringComparison.Ordinal);
    }

    // Of 150.5 L/h that the pump gives (as above) 69.68 … 79.73 … 95.00 are burnt: 55.5 … 70.8 … 80.8 have to pass the regulator.
    [Theory]
    [InlineData("81 L/h", Enough.Yes)]
    [InlineData("80 L/h", Enough.NotKnown)]
    [InlineData("70 L/h", Enough.No)]
    public void Regulator_must_pass_what_is_not_burnt_at_the_goal(string capacity, Enough expected) =>
        Assert.Equal(expected, Link(Size(Ask().Losing("0.2 bar") with { Regulator = Regulator("3.00 bar", "manifold").Passing(capacity) }), "regulator").Enough);

    [Fact]
    public void Regulator_whose_capacity_nobody_recorded_is_not_known_to_be_enough()
    {
        var link = Link(Size(Ask()), "regulator");
        Assert.Equal(Enough.NotKnown, link.Enough);
        Assert.StartsWith("Not known: it holds 3.00 bar over the manifold, but what flow it passes is not recorded: ", link.Because, StringComparison.Ordinal);
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
        Assert.Equal(expected, Link(Size(Ask() with { Regulator = Regulator(set, reference).Passing("300 L/h") }), "regulator").Enough);

    [Fact]
    public void Line_without_loss_has_no_limit_of_power()
    {
        var line = Link(Size(Ask() with { LineLoss = ReadRange("0 bar", Dimension.Pressure) }), "line");
        Assert.Equal((Enough.Yes, null), (line.Enough, line.Power));
    }

    // 95.7 L/h are wanted. 8.0 bar of relief, rail 4.1: 4 bar lost at 95.6 L/h open it, at 70.7 % of that flow's power.
    [Fact]
    public void Loss_that_opens_the_relief_valve_is_not_enough()
    {
        var line = Link(Size(Ask().Losing("4.0 bar", "95.6 L/h")), "line");
        Assert.Equal(Enough.No, line.Enough);
        Assert.True(line.Power!.Expected < 180_000); // a loss is given
    }

    // 4.1 bar on the rail and 5.0 of loss are 9.1 at the pump: beyond its table, which ends at 5.0, and beyond its relief valve of 8.0.
    [Fact]
    public void Pump_beyond_its_relief_valve_is_not_enough_whatever_its_table_reaches()
    {
        var pump = Link(Size(Ask().Losing("5.0 bar", "95.6 L/h")), "pump");
        Assert.Equal(Enough.No, pump.Enough);
        Assert.Contains("its relief valve is open", pump.Because, StringComparison.Ordinal);
        // 7.9 bar are below the valve and beyond the table: not known.
        Assert.Equal(Enough.NotKnown, Link(Size(Ask().Losing("3.8 bar", "95.7 L/h")), "pump").Enough);
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
        Assert.Contains(plot.Limits, limit => limit is { Direction: PlotDirection.Upright, At: > 4.282 and < 4.284 }); // 4.1 + 0.2 × 0.957² bar at the pump
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

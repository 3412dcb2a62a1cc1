using CsCheck;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;
using PartMatch.Core.Supply;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;
using static PartMatch.Core.Tests.Supply.SupplyExamples;

namespace PartMatch.Core.Tests.Supply;

public sealed class SupplySizingTests
{
    // 150 kW × 300 g/(kW·h) = 45.0 kg/h ÷ 0.745 kg/L = 60.40 L/h burnt. Four injectors of 296.092 cm3/min of petrol held open 71.06 L/h; with a fifth more
    // 85.27.
    // 255 L/h at 4 bar: 255 × 4 ÷ 36 = 28.33 W. Source: Q sum; P = Q × Δp.
    [Fact]
    public void Pump_demand_as_by_hand()
    {
        var textbook = Textbook("150 kW", "300 g/(kW·h)", 4, "85 %");
        var need = Size(new SupplyQuestion(textbook)
        {
            Injector = Injector("I-1", "296.092 cm3/min", fluid: "petrol"),
            Return = ReadRange("0 %", Dimension.Ratio)
        }).Need;
        Near(60.40, In("L/h", need.Burnt.Expected), 1e-3);
        Near(71.06, In("L/h", need.InjectorsHeldOpen!.Expected), 1e-3); // the rating is whole
        Near(85.27, In("L/h", need.InjectorsHeldOpen.Expected) * 1.2, 1e-3);

        var large = textbook with
        {
            Power = Read("633.25 kW", Dimension.Power),
            Supply = FuelSupply.ReturnlessFixed,
            Pressure = Read("4.0 bar", Dimension.Pressure)
        };
        var pushed = Size(new SupplyQuestion(large) { LineLoss = ReadRange("0 bar", Dimension.Pressure) }).Need;
        Near(255, In("L/h", pushed.Wanted.Expected), 1e-4); // 633.25 × 0.300 ÷ 0.745
        Near(28.33, pushed.HydraulicPower.Expected, 1e-3);
    }

    // By hand: burnt 54.00, 59.40, 68.40 kg/h ÷ 0.775, 0.745, 0.720 = 69.68, 79.73, 95.00 L/h; × 1.1, 1.2, 1.3 = 76.65, 95.68, 123.50 L/h.
    // Rail 3.0 + 1.1 = 4.1 bar gauge; the usual 0.1, 0.2, 0.4 bar at 100 L/h are 0.1 × 0.76645² = 0.0587, 0.2 × 0.95678² = 0.1831, 0.4 × 1.235² = 0.6101.
    [Fact]
    public void Hill_climb_goal_as_by_hand()
    {
        var need = Size(Ask()).Need;
        Is("L/h", need.Burnt, 69.677, 79.732, 95.0);
        Is("L/h", need.Wanted, 76.645, 95.678, 123.5);
        Is("bar", need.RailPressure, 4.1, 4.1, 4.1);
        Is("bar", need.PressureAtPump, 4.15874, 4.28309, 4.71009);
    }

    // Table at 13.5 V: 165 at 4.0, 152 at 4.5, 138 at 5.0: 4.1587 → 160.873, 4.2831 → 157.640, 4.7101 → 146.117 L/h.
    // Margin 157.640 ÷ 95.678 − 1 = 64.8 %; least 146.117 ÷ 123.5 − 1 = 18.3 %.
    [Fact]
    public void Pump_is_read_at_its_own_voltage_and_pressure()
    {
        var pump = Size(Ask(), Pump).Pumps[0];
        Is("L/h", pump.Flow, 146.117, 157.640, 160.873);
        Near(0.6476, pump.Margin!.Expected, 1e-3); // the table reaches there
        Near(0.1831, pump.Margin.Low, 1e-3);
        Assert.Equal((Enough.Yes, WettedFor.Recorded), (pump.Enough, pump.WettedFor));
    }

    // The pump sees the rail, not the pressure across: with a hose to the manifold 1.1 bar of boost is 1.1 bar more, 165 − 13 × 0.6 against 184 … at 3.2.
    [Fact]
    public void Boost_is_pressure_that_the_pump_has_to_make()
    {
        var (boosted, calm) = (Size(Ask()).Need, Size(Ask(HillClimbGoal with { Boost = Read("0 bar", Dimension.Pressure) })).Need);
        Near(110_000, boosted.PressureAtPump.Expected - calm.PressureAtPump.Expected, 1e-9);
    }

    [Theory]
    [InlineData("11.9 V", "recorded for 12.0 … 13.5 V")]
    [InlineData("13.6 V", "nothing is read beyond a table")]
    public void Beyond_its_table_a_pump_is_not_known(string volt, string reason)
    {
        var pump = Size(Ask() with { PumpVoltage = Read(volt, Dimension.Voltage) }, Pump).Pumps[0];
        Assert.Equal((Enough.NotKnown, null), (pump.Enough, pump.Flow));
        Assert.Contains(reason, pump.Because, StringComparison.Ordinal);
    }

    // Half way from 12 V to 13.5 V at 4.0 bar: (139 + 165) ÷ 2 = 152.
    [Fact]
    public void Voltage_at_the_pump_moves_its_delivery()
    {
        var question = Ask(HillClimbGoal with { Supply = FuelSupply.ReturnlessFixed, Pressure = Read("4.0 bar", Dimension.Pressure) }) with
        {
            PumpVoltage = Read("12.75 V", Dimension.Voltage),
            LineLoss = ReadRange("0 bar", Dimension.Pressure),
        };
        Near(152, In("L/h", Size(question, Pump).Pumps[0].Flow!.Expected), 1e-9); // inside the table
    }

    [Theory]
    [InlineData(124, Enough.Yes)]
    [InlineData(123, Enough.NotKnown)]
    [InlineData(96, Enough.NotKnown)]
    [InlineData(95, Enough.No)]
    public void Enough_is_judged_against_the_whole_range(int litresPerHour, Enough expected) =>
        Assert.Equal(expected, Size(Ask(), Make("P-2", "petrol", "8.0 bar", (13.5m, 4.0m, litresPerHour), (13.5m, 5.0m, litresPerHour))).Pumps[0].Enough);

    // Wanted 76.65 … 95.68 … 123.50 L/h: 76 is below all of it, 95 below what is expected only.
    [Theory]
    [InlineData(76, "Not enough even in the best case: ")]
    [InlineData(77, "Not enough with the expected figures, only in the best case: ")]
    [InlineData(95, "Not enough with the expected figures, only in the best case: ")]
    public void Not_enough_says_whether_the_best_case_would_do(int litresPerHour, string beginning)
    {
        var pump = Make("P-2", "petrol", "8.0 bar", (13.5m, 4.0m, litresPerHour), (13.5m, 5.0m, litresPerHour));
        Assert.StartsWith(beginning, Size(Ask(), pump).Pumps[0].Because, StringComparison.Ordinal);
    }

    // 4.283 … 4.710 bar at the pump, spring ± 0.2: open at 4.28 and below, perhaps up to 4.91.
    [Theory]
    [InlineData("4.28 bar", Enough.No)]
    [InlineData("4.29 bar", Enough.NotKnown)]
    [InlineData("4.91 bar", Enough.NotKnown)]
    [InlineData("4.92 bar", Enough.Yes)]
    public void Relief_valve_must_stay_shut(string relief, Enough expected) =>
        Assert.Equal(expected, Size(Ask(), Make("P-2", "petrol", relief, (13.5m, 4.0m, 300), (13.5m, 5.0m, 300))).Pumps[0].Enough);

    [Theory]
    [InlineData("petrol-e0", "petrol", WettedFor.Recorded)]
    [InlineData("petrol-e10", "petrol", WettedFor.OtherFuels)]
    [InlineData("e85", "e10|petrol", WettedFor.OtherFuels)]
    [InlineData("ethanol", "e85", WettedFor.Recorded)]
    [InlineData("methanol", "e85", WettedFor.OtherFuels)]
    [InlineData("methanol", "m100", WettedFor.Recorded)]
    [InlineData("petrol-e0", null, WettedFor.NotKnown)]
    public void Wetted_parts_carry_the_fuels_they_are_recorded_for(string fuel, string? wetted, WettedFor expected)
    {
        var pump = Make("P-2", wetted, "8.0 bar", (13.5m, 3.0m, 400), (13.5m, 6.0m, 400));
        var sized = Size(Ask(HillClimbGoal with { Fuel = fuel, Bsfc = null }) with { Pump = pump }, pump);
        Assert.Equal(expected, sized.Pumps[0].WettedFor);
        Assert.Equal(expected != WettedFor.Recorded, sized.Warnings.Any(warning => warning.Code == "pump-not-recorded-for-fuel"));
    }

    [Fact]
    public void What_the_working_says_is_the_hand_sum() => Assert.Equal(
        [
            "180 kW × 330 g/(kW·h) = 59.40 kg/h", "59.40 kg/h ÷ 0.7450 kg/L = 79.7 L/h", "79.7 L/h × (1 + 20 %) = 95.7 L/h",
                "set 3.00 bar = 3.00 bar; the rail stands at 4.10 bar gauge",
            "0.20 bar × (95.7 L/h ÷ 100 L/h)² = 0.18 bar", "4.10 bar + 0.18 bar = 4.28 bar", "95.7 L/h × 4.28 bar ÷ 36 W·h/(L·bar) = 11.4 W",
        ],
        Size(Ask()).Working.Select(step => $"{step.With} = {step.Result}"));

    [Fact]
    public void More_power_or_more_return_wants_more() => Gen.Select(Gen.Int[20, 400], Gen.Int[0, 50], Gen.Int[1, 50]).Sample((kilowatts, back, more) =>
    {
        SupplyQuestion At(int power, int share) =>
            Ask(HillClimbGoal with { Power = Read($"{power} kW", Dimension.Power) }) with { Return = ReadRange($"{share} %", Dimension.Ratio) };
        var wanted = Size(At(kilowatts, back)).Need.Wanted;
        return Size(At(kilowatts + more, back)).Need.Wanted.Expected > wanted.Expected && Size(At(kilowatts, back + more)).Need.Wanted.High > wanted.High;
    }, iter: 100);

    [Theory]
    [InlineData("carburetted")]
    [InlineData("direct-injected")]
    public void What_the_injector_sums_refuse_is_refused_here_too(string fuelSystem) =>
        Assert.Equal(fuelSystem, Assert.IsType<SumRefused>(SupplySizing.Size(Ask(), [], [],
            [.. BoostedTriple.Where(fact => fact.Property != "fuel-system"), Word("ts", "fuel-system", fuelSystem)])).Code);

    [Fact]
    public void Loss_return_and_voltage_outside_what_they_can_be_are_refused()
    {
        Assert.Equal("line-loss-flow", Refused(Ask() with { LineLoss = ReadRange("0.1 bar", Dimension.Pressure) }));
        Assert.Equal("line-loss-flow", Refused(Ask().Losing("0.1 bar", "0 L/h")));
        Assert.Equal("line-loss", Refused(Ask() with { LineLossFlow = ReadRange("100 L/h", Dimension.VolumeFlow) }));
        Assert.Equal("line-loss", Refused(Ask() with { LineLoss = ReadRange("-0.1 bar", Dimension.Pressure) }));
        Assert.Equal("return", Refused(Ask() with { Return = ReadRange("20", Dimension.Ratio) }));
        Assert.Equal("return", Refused(Ask() with { Return = ReadRange("5", Dimension.Ratio) }));
        Assert.Equal("return", Refused(Ask() with { Return = ReadRange("-1 %", Dimension.Ratio) }));
        Assert.Equal("pump-voltage", Refused(Ask() with { PumpVoltage = Read("0 V", Dimension.Voltage) }));

        static string Refused(SupplyQuestion question) => Assert.IsType<SumRefused>(SupplySizing.Size(question, [], [], BoostedTriple)).Field;
    }

    private static void Is(string unit, QuantityRange? range, double low, double expected, double high)
    {
        Assert.NotNull(range);
        Near(low, In(unit, range.Low), 2e-5);
        Near(expected, In(unit, range.Expected), 2e-5);
        Near(high, In(unit, range.High), 2e-5);
    }
}

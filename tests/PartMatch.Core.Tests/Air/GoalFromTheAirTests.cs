using PartMatch.Core.Air;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Air;

public sealed class GoalFromTheAirTests
{
    private static readonly IReadOnlyList<EngineFact> Whole =
    [
        .. BoostedTriple, Amount("ts", "displacement", "1600.2 cm3", Dimension.Volume), Amount("ts", "stroke", "94.00 mm", Dimension.Length),
        Amount("ts", "rated-power", "120 kW", Dimension.Power), Amount("ts", "rated-speed", "5500 1/min", Dimension.Speed),
    ];

    private static readonly InjectorQuestion Goal = HillClimb with { Bsfc = ReadRange("300..330..380 g/(kW·h)", Dimension.SpecificConsumption) };

    // By hand, all of it expected: (101 325 + 110 000) Pa ÷ (287.05 × 323.15 K) = 2.27819 kg/m3; 1.6002 L × 6800 ÷ 120 × 0.90 × 2.27819 = 185.92 g/s =
    // 669.32 kg/h;
    // ÷ (0.87 × 14.7 × 330 g/(kW·h)) = 158.6 kW. Best: 40 … 15: 211 325 ÷ (287.05 × 308.15) = 2.38908; × 1.00 → 216.64 g/s; ÷ (0.80 × 14.6 × 300) = 222.6 kW.
    [Fact]
    public void Goal_beyond_the_expected_air_is_ambitious()
    {
        var side = Check(Goal);

        Assert.Equal(GoalStanding.Ambitious, side.Standing);
        Near(0.18593, side.AirFlow!.Expected, 2e-4); // the displacement is recorded
        Near(158_600, side.Power!.Expected, 1e-3);
        Near(222_600, side.Power.High, 1e-3);
        Near(19.85e5, side.Bmep!.Expected, 1e-3);
        Near(21.31, side.PistonSpeed!.Expected, 1e-3);
        Assert.Contains("2.2782 kg/m³", side.Working[0].Result, StringComparison.Ordinal);
        Assert.Equal("669.32 kg/h ÷ (12.79 × 330 g/(kW·h)) × 1000 g/kg = 158.6 kW", $"{side.Working[2].With} = {side.Working[2].Result}");
    }

    [Theory]
    [InlineData("158 kW", GoalStanding.Ordinary)]
    [InlineData("159 kW", GoalStanding.Ambitious)]
    [InlineData("222 kW", GoalStanding.Ambitious)]
    [InlineData("223 kW", GoalStanding.Unlikely)]
    public void Standing_follows_from_what_the_air_carries(string power, GoalStanding expected) =>
        Assert.Equal(expected, Check(Goal with { Power = Read(power, Dimension.Power) }).Standing);

    // At 0.8 bar the air carries (181 325 ÷ (287.05 × 323.15)) × 1.6002 × 5500 ÷ 120 × 0.90 = 129.0 g/s: 464.5 kg/h ÷ (12.79 × 330) = 110.1 kW with the expected
    // figures; as built the variant is recorded with 120 kW at 5500/min. More power, the same at a lower speed, less boost or other air is another matter.
    [Theory]
    [InlineData("120 kW", "5500/min", "0.8 bar", null, GoalStanding.Ordinary)]
    [InlineData("120.1 kW", "5500/min", "0.8 bar", null, GoalStanding.Ambitious)]
    [InlineData("120 kW", "5499/min", "0.8 bar", null, GoalStanding.Ambitious)]
    [InlineData("120 kW", "5500/min", "0.79 bar", null, GoalStanding.Ambitious)]
    [InlineData("120 kW", "5500/min", "0.8 bar", "100 m", GoalStanding.Ambitious)]
    [InlineData("110 kW", "5500/min", "0.8 bar", null, GoalStanding.Ordinary)]
    [InlineData("120 kW", "5500/min", "0 bar", null, GoalStanding.Unlikely)]
    public void What_the_variant_is_recorded_to_do_is_not_ambitious(string power, string speed, string boost, string? altitude, GoalStanding expected)
    {
        var side = Check(Goal with
        {
            Power = Read(power, Dimension.Power),
            Speed = Read(speed, Dimension.Speed),
            Boost = Read(boost, Dimension.Pressure),
            Air = new AirTyped { Altitude = altitude is null ? null : ReadRange(altitude, Dimension.Length) },
        });
        Assert.Equal(expected, side.Standing);
        Assert.Equal(power == "120 kW" && expected == GoalStanding.Ordinary, side.Because.StartsWith(
            "Within what is recorded of this variant as built, 120 kW at 5500/min, though the expected figures carry less", StringComparison.Ordinal));
    }

    [Fact]
    public void Half_of_what_a_correction_takes_is_asked_to_be_made_whole()
    {
        string Field(AirTyped air) => Assert.IsType<SumRefused>(InjectorSizing.Size(Goal with { Air = air }, [], Whole)).Field;
        Assert.Equal("measured-temperature", Field(new AirTyped { MeasuredPressure = ReadRange("98 kPa", Dimension.Pressure) }));
        Assert.Equal("measured-pressure", Field(new AirTyped { MeasuredTemperature = ReadRange("30 degC", Dimension.Temperature) }));
    }

    [Fact]
    public void Without_a_displacement_the_air_says_nothing_and_asks_for_it()
    {
        var side = Size(Goal).AirSide;
        Assert.Equal((GoalStanding.NotKnown, null, null), (side.Standing, side.AirFlow, side.Power));
        Assert.Contains("displacement=", side.Because, StringComparison.Ordinal);
        Assert.NotNull(Size(Goal with { Displacement = Read("1600 cm3", Dimension.Volume) }).AirSide.Power);
    }

    // 120 kW × 120 ÷ (1.6002 × 5500) = 16.36 bar; redline 7200: 2 × 94 × 7200 ÷ 60 = 22.56 m/s.
    [Fact]
    public void Family_comes_first_among_the_yardsticks()
    {
        var yardsticks = Check(Goal).Yardsticks;
        Assert.Equal(["ts", "published"], yardsticks.Select(one => one.Of));
        Near(16.36e5, yardsticks[0].Bmep.Expected, 5e-4);
        Near(22.56, yardsticks[0].PistonSpeed!.Expected, 5e-4); // the stroke is recorded
        Assert.Contains("Heywood 1988", yardsticks[1].Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Flags_state_the_number_the_usual_range_and_end_in_measure()
    {
        var sized = Assert.IsType<InjectorsSized>(InjectorSizing.Size(Goal, [], Whole));
        var flag = Assert.Single(sized.Warnings, warning => warning.Code == "bmep-above-usual");
        Assert.Contains("19.9 bar", flag.Text, StringComparison.Ordinal);
        Assert.Contains("ts with 16.4 bar", flag.Text, StringComparison.Ordinal);
        Assert.EndsWith("measure.", flag.Text, StringComparison.Ordinal);
        Assert.Contains(sized.Warnings, warning => warning.Code == "goal-ambitious");
        Assert.DoesNotContain(sized.Warnings, warning => warning.Code == "piston-speed-above-usual"); // the variant's own redline is faster
    }

    // 1500 m: 84.6 kPa; (84 556 + 110 000) ÷ (101 325 + 110 000) = 0.9206 of the power.
    [Fact]
    public void Height_takes_power_away()
    {
        var high = Check(Goal with { Air = new AirTyped { Altitude = ReadRange("1500 m", Dimension.Length) } });
        Near(0.9206, high.Power!.Expected / Check(Goal).Power!.Expected, 1e-3); // the displacement is recorded
    }

    [Fact]
    public void Air_that_is_typed_stands_for_what_is_assumed()
    {
        var typed = new AirTyped
        {
            VolumetricEfficiency = ReadRange("0.95", Dimension.Ratio),
            Lambda = ReadRange("0.85", Dimension.Ratio),
            ChargeTemperature = ReadRange("40..45..60 degC", Dimension.Temperature),
        };
        var side = Check(Goal with { Air = typed });
        Assert.All(side.Assumed.Where(one => one.Name is "volumetric-efficiency" or "lambda" or "charge-temperature"), one =>
            Assert.Equal("given in the question", one.Source));
        Assert.Equal(typed.ChargeTemperature, side.Assumed.Single(one => one.Name == "charge-temperature").Range);
    }

    // 95 kPa and 308 K: factor 1.07175 (ISO 1585), so 180 kW become 192.9 kW; outside 0.93 … 1.07, and that is said.
    [Fact]
    public void Measured_power_is_corrected_beside_the_sizing()
    {
        var typed = new AirTyped
        {
            MeasuredPressure = ReadRange("95 kPa", Dimension.Pressure),
            MeasuredTemperature = ReadRange("308 K", Dimension.Temperature)
        };
        var corrected = Check(Goal with { Air = typed }).Corrected;
        Assert.NotNull(corrected);
        Near(192_915, corrected.Power.Expected, 2e-4);
        Assert.Contains("outside 0.93 … 1.07", corrected.Text, StringComparison.Ordinal);
        Assert.Null(Check(Goal).Corrected);
    }

    private static AirSide Check(InjectorQuestion question) => Assert.IsType<InjectorsSized>(InjectorSizing.Size(question, [], Whole)).AirSide;

    // 180 g/(kW·h) is the least that is to be expected of petrol: below it the same air carries any goal on paper.
    [Theory]
    [InlineData("180 g/(kW·h)", GoalStanding.Ordinary)]
    [InlineData("179 g/(kW·h)", GoalStanding.NotKnown)]
    public void Consumption_that_no_engine_reaches_confirms_no_goal(string bsfc, GoalStanding expected) =>
        Assert.Equal(expected, Check(Goal with { Bsfc = ReadRange(bsfc, Dimension.SpecificConsumption) }).Standing);
}

using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class InjectorJudgementTests
{
    private static readonly InjectorQuestion Goal = HillClimb with { Bsfc = ReadRange("300..330..380 g/(kW·h)", Dimension.SpecificConsumption) };

    // Four injectors rated on petrol of 745 kg/m3, duty 0.85, BSFC 320: P = n × Q × ρ × D ÷ BSFC, the need turned round.
    // 4 × 240 cm3/min × 0.745 g/cm3 × 60 × 0.85 ÷ 320 = 113.99 kW.
    [Theory]
    [InlineData("240 cm3/min", 113.99, 152.9)]
    [InlineData("330 cm3/min", 156.73, 210.2)]
    [InlineData("440 cm3/min", 208.97, 280.2)]
    [InlineData("550 cm3/min", 261.22, 350.3)]
    public void A_set_supports_the_power_of_its_flow(string flow, double expectedKilowatts, double expectedHorsepower)
    {
        var power = Judge(Textbook("100 kW", "320 g/(kW·h)", 4, "85 %"), Injector("I-1", flow, fluid: "petrol")).PowerAtDuty;
        Assert.NotNull(power);
        Near(expectedKilowatts, power.Expected / 1000, 1e-4);
        Near(expectedHorsepower, In("hp(I)", power.Expected), 3e-4); // printed to four digits
    }

    // By hand, 550 cm3/min of n-heptane at 3.00 bar, dead time 0.92 ms, cycle 17.647 ms, three injectors:
    //                               best (775, BSFC 300)   expected (745, 330)   worst (720, 380)
    //   flow  550 × √(0.6838 ρ)        400.385                392.559               385.917 g/min
    //   open  fuel ÷ 3 ÷ flow            0.74928                0.84064               0.98467
    //   duty  + 0.92 ÷ 17.647            0.80141                0.89277               1.03680
    //   pulse × 17.647                  14.1426                15.7548               18.2965 ms
    //   power (0.85 − 0.05213) × 3 × flow × 60 ÷ BSFC = 191.6724, 170.8418, 145.8521 kW
    [Fact]
    public void An_injector_of_550_is_not_enough_for_the_hill_climb_goal()
    {
        var judged = Judge(Goal, Injector("I-5501", "550 cm3/min", deadTimes: Always(0.92m)));
        Is(judged.Flow, "g/min", 385.917, 392.559, 400.385);
        Is(judged.Duty, "1", 0.801412, 0.892770, 1.036802);
        Is(judged.Pulse, "ms", 14.14256, 15.75477, 18.29651);
        Is(judged.PowerAtDuty, "kW", 145.8521, 170.8418, 191.6724);
        Assert.Equal(Enough.No, judged.Enough);
        Assert.Equal("Not enough with the expected figures, only in the best case: open 80.1 … 89.3 … 103.7 % of the time at the goal, limit 85 %.", judged.Because);
        Assert.Equal(new RatedAs("550 cm3/min", "3.00 bar", "n-heptane"), judged.Rated);
        Assert.Equal(
            [
                "550 cm³/min × √(0.6838 × 0.7450) g/cm³ × √(3.00 bar ÷ 3.00 bar) = 392.6 g/min",
                "59.40 kg/h ÷ 3 × 1000 g/kg ÷ 60 min/h ÷ 392.6 g/min = 84.06 %",
                "84.06 % + 1 × 0.92 ms ÷ 17.647 ms = 89.28 %",
                "(85 % − 1 × 0.92 ms ÷ 17.647 ms) × 3 × 392.6 g/min × 60 min/h ÷ 330 g/(kW·h) = 170.8 kW",
            ],
            judged.Working.Select(step => $"{step.With} = {step.Result}"));
    }

    // 440 × √(0.6838 × 0.775) = 320.3 g/min at most, 300 g/(kW·h) at least: 54.0 kg/h ÷ 3 = 300 g/min is 93.7 % before any dead time, above 85 % already; of 550
    // the best case lies below (80.1 %), the expected one above. For half the power 440 are enough: at most 68.4 kg/h ÷ 6 = 190 ÷ 308.7 + 5.2 = 66.8 %.
    [Theory]
    [InlineData("440 cm3/min", "180 kW", "Not enough even in the best case: ")]
    [InlineData("550 cm3/min", "180 kW", "Not enough with the expected figures, only in the best case: ")]
    [InlineData("440 cm3/min", "90 kW", "Enough even in the worst case: ")]
    public void Not_enough_says_whether_the_best_case_would_do(string flow, string power, string beginning) => Assert.StartsWith(
        beginning, Judge(Goal with { Power = Read(power, Dimension.Power) }, Injector("I-1", flow, deadTimes: Always(0.92m))).Because, StringComparison.Ordinal);

    // 550 rated at 4.0 bar is 550 × √(3/4) = 476.31 at 3.0: the same answer as that one.
    [Fact]
    public void A_rating_at_another_pressure_is_brought_to_the_goal()
    {
        var (at4, at3) = (Judge(Goal, Injector("I-5504", "550 cm3/min", "4.00 bar")), Judge(Goal, Injector("I-4763", "476.313972 cm3/min")));
        Near(at3.Flow!.Expected, at4.Flow!.Expected, 1e-8); // both have a whole rating
    }

    // A rating of 550 ± 11 cm3/min carries its spread: 539 and 561, so 2 % either way.
    [Fact]
    public void The_makers_spread_of_a_rating_is_carried()
    {
        var plain = Judge(Goal, Injector("I-1", "550 cm3/min")).Flow;
        var spread = Judge(Goal, Injector("I-1", null, more: Value("rated-flow", "550 cm3/min", Dimension.VolumeFlow, spread: 11))).Flow;
        Assert.NotNull(plain);
        Assert.NotNull(spread);
        Near(plain.Low * 0.98, spread.Low, 1e-12);
        Near(plain.Expected, spread.Expected, 1e-12);
        Near(plain.High * 1.02, spread.High, 1e-12);
    }

    // The duty of an injector does not hang on the limit, so the limit can be put on, just inside and just outside each end of it.
    [Theory]
    [InlineData("high", 1e-6, Enough.Yes)]
    [InlineData("high", 0, Enough.Yes)]
    [InlineData("high", -1e-6, Enough.NotKnown)]
    [InlineData("expected", 1e-6, Enough.NotKnown)]
    [InlineData("expected", 0, Enough.NotKnown)]
    [InlineData("expected", -1e-6, Enough.No)]
    public void Enough_is_yes_up_to_the_high_duty_and_no_beyond_the_expected_one(string end, double beyond, Enough expected)
    {
        var injector = Injector("I-8601", "860 cm3/min", deadTimes: Always(0.92m));
        var duty = Judge(Goal, injector).Duty;
        Assert.NotNull(duty);
        var limit = (decimal)((end == "high" ? duty.High : duty.Expected) + beyond);
        Assert.Equal(expected, Judge(Goal with { Duty = new Quantity(limit, "1", $"{limit}") }, injector).Enough);
    }

    // Three squirts of 4.9 ms are 14.7 of 17.647 ms: 83.3 % before a drop has flowed; three of 5.1 ms are 86.7 %, more than the limit of 85 %.
    [Theory]
    [InlineData(4.9, true)]
    [InlineData(5.1, false)]
    public void Dead_time_can_eat_all_the_duty_of_an_injector(double milliseconds, bool feeds)
    {
        var judged = Judge(Goal with { Shots = 3 }, Injector("I-1", "860 cm3/min", deadTimes: Always((decimal)milliseconds)));
        Assert.NotNull(judged.PowerAtDuty);
        Assert.Equal(feeds, judged.PowerAtDuty.Expected > 0);
        Assert.True(judged.PowerAtDuty.Low >= 0);
        Assert.Equal(Enough.No, judged.Enough);
    }

    private static void Is(QuantityRange? range, string unit, double low, double expected, double high)
    {
        Assert.NotNull(range);
        Near(low, In(unit, range.Low), 2e-6);
        Near(expected, In(unit, range.Expected), 2e-6);
        Near(high, In(unit, range.High), 2e-6);
    }
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class StagedAndControlledTests
{
    private static readonly InjectorQuestion Goal = HillClimb with { Bsfc = ReadRange("330 g/(kW·h)", Dimension.SpecificConsumption) };

    // By hand: 250 and 440 cm3/min × √(0.6838 × 0.745) = 178.435 and 314.045, together 492.480 g/min; dead time (178.435 × 0.9 + 314.045 × 1.1) ÷ 492.480 =
    // 1.02753 ms.
    // 59.40 kg/h ÷ 3 = 330 g/min: 330 ÷ 492.480 = 67.008 %; + 1.02753 ÷ 17.647 = 5.823 %: 72.83 %. Power (0.85 − 0.05823) × 3 × 492.480 × 60 ÷ 330 = 212.70 kW.
    [Fact]
    public void Staged_pair_as_by_hand()
    {
        var judged = Judge(Goal with { StagedWith = Injector("I-4401", "440 cm3/min", deadTimes: Always(1.1m)) },
            Injector("I-2501", "250 cm3/min", deadTimes: Always(0.9m)));
        Near(0.72831, judged.Duty!.Expected, 1e-4); // both have a whole rating
        Near(212_700, judged.PowerAtDuty!.Expected, 1e-4);
        Near(0.9e-3, judged.DeadTime!.Expected, 1e-9);
        Assert.Contains("beside harl:I-4401 in each cylinder", judged.Because, StringComparison.Ordinal);
        Assert.Contains(judged.Working, step => step.What == "dead time of the staged pair" && step.Result == "1.03 ms");
    }

    // The pulse of the pair is 0.72831 × 17.647 = 12.8525 ms, its fuel 330 g/min × 17.647 ms = 97.06 mg. The one judged: 178.435 g/min × (12.8525 − 0.9) ms =
    // 35.546 mg, 36.62 %; the second 314.045 × (12.8525 − 1.1) = 61.513 mg, 63.38 %: together all of it.
    [Fact]
    public void Staged_pair_says_how_it_shares_the_fuel()
    {
        var judged = Judge(Goal with { StagedWith = Injector("I-4401", "440 cm3/min", deadTimes: Always(1.1m)) },
            Injector("I-2501", "250 cm3/min", deadTimes: Always(0.9m)));
        Assert.Contains("Of the fuel it feeds 37 % and the second stage 63 %.", judged.Because, StringComparison.Ordinal);
        Assert.Equal("36.6 %", judged.Working.Single(step => step.What == "share of the fuel that it feeds itself").Result);
    }

    // 59.40 kg/h ÷ 3 cylinders = 330.0 g/min. Held open, dead time 1.0 ms: ÷ (0.85 − 1.0 ÷ 17.647 = 79.333 %) = 415.97 g/min; of each of two halves of it.
    [Fact]
    public void Need_of_a_cylinder_is_told_whatever_shares_it()
    {
        var goal = Goal with { DeadTime = ReadRange("1.0 ms", Dimension.Time) };
        var (one, two) = (Size(goal).NeedPerCylinder, Size(goal with { InjectorsPerCylinder = 2 }));
        Assert.Equal("330.0 g/min", one.Fuel.Text);
        Near(415.97, In("g/min", one.Mass.Expected), 1e-4);
        Assert.Equal(one.Mass, two.NeedPerCylinder.Mass);
        Near(207.98, In("g/min", two.NeedPerInjector.Mass.Expected), 1e-4);
        Assert.Contains("2 injectors for each cylinder", two.NeedPerCylinder.Shared, StringComparison.Ordinal);
        Assert.Contains(two.Working, step => step.With == "208.0 g/min × 2" && step.Result == "416.0 g/min");
    }

    // 415.97 g/min for the pair, 314.05 from the second stage (440 cm3/min × √(0.6838 × 0.745)): 101.92 are left, a rating of 101.92 ÷ 0.71374 = 142.80 cm3/min.
    [Fact]
    public void Second_stage_leaves_the_rest_to_the_first()
    {
        var sized = Size(Goal with { DeadTime = ReadRange("1.0 ms", Dimension.Time), StagedWith = Injector("I-4401", "440 cm3/min") });
        var first = sized.NeedPerCylinder.FirstStage!; // the second stage has a whole rating
        Assert.Equal("harl:I-4401", first.Second);
        Near(314.05, In("g/min", first.SecondMass.Expected), 1e-4);
        Near(101.92, In("g/min", first.Mass.Expected), 1e-3);
        Near(142.80, In("cm3/min", first.RatedVolume.Expected), 1e-3);
        Assert.Contains("at idle the first stage feeds alone", sized.NeedPerCylinder.Shared, StringComparison.Ordinal);
        Assert.Contains(sized.Working, step => step.What == "flow wanted of each staged pair held open");
        Assert.Contains(sized.Working, step => step.With == "416.0 g/min − 314.0 g/min" && step.Result == "101.9 g/min");
    }

    [Fact]
    public void Second_stage_that_gives_more_than_is_wanted_leaves_nothing_and_never_less()
    {
        var first = Size(Goal with { DeadTime = ReadRange("1.0 ms", Dimension.Time), StagedWith = Injector("I-9991", "999 cm3/min") }).NeedPerCylinder.FirstStage;
        Assert.Equal((0, 0), (first!.Mass.Low, first.Mass.Expected)); // the second stage has a whole rating
    }

    [Fact]
    public void Second_stage_without_a_rating_leaves_the_sharing_open()
    {
        var need = Size(Goal with { StagedWith = Injector("I-0000", null) }).NeedPerCylinder;
        Assert.Null(need.FirstStage);
        Assert.StartsWith("How the two stages share it is not known: ", need.Shared, StringComparison.Ordinal);
    }

    [Fact]
    public void Pair_of_equals_is_two_injectors_for_each_cylinder()
    {
        var injector = Injector("I-4401", "440 cm3/min", deadTimes: Always(1.0m));
        var (pair, two) = (Judge(Goal with { StagedWith = injector }, injector), Judge(Goal with { InjectorsPerCylinder = 2 }, injector));
        Near(two.Duty!.Expected, pair.Duty!.Expected, 1e-12); // both have a whole rating
        Near(two.PowerAtDuty!.High, pair.PowerAtDuty!.High, 1e-12);
    }

    [Fact]
    public void Second_injector_without_a_rating_leaves_the_pair_open()
    {
        var judged = Judge(Goal with { StagedWith = Injector("I-0000", null) }, Injector("I-2501", "250 cm3/min"));
        Assert.Equal((Enough.NotKnown, null), (judged.Enough, judged.Duty));
        Assert.Contains("second injector, harl:I-0000", judged.Because, StringComparison.Ordinal);
    }

    // Rail 3.5 bar without boost and 4.5 bar at 1.0 bar: at 0.5 bar of boost 4.0 on the rail, 3.5 across; at 1.0 bar 4.5 and 3.5.
    [Theory]
    [InlineData("0 bar", "3.50 bar")]
    [InlineData("0.5 bar", "3.50 bar")]
    [InlineData("1.0 bar", "3.50 bar")]
    public void Controlled_rail_follows_its_table(string boost, string across) =>
        Assert.Equal(across, Size(Goal with
        {
            Supply = FuelSupply.ReturnlessControlled,
            RailTable = [new(0, 350_000), new(100_000, 450_000)],
            Boost = Read(boost, Dimension.Pressure)
        }).PressureAcross.Text);

    // A table that is flat, then steep: 4.0 bar up to 0.5, 5.5 at 1.5. Boost 0 … 0.5 … 1.5: across 4.0, 3.5, 4.0; the least lies at the knee.
    [Fact]
    public void Range_of_boost_over_a_bent_table_has_its_least_at_the_knee()
    {
        var boost = Assert.IsType<RangeRead>(QuantityRangeParser.Parse("0..0.75..1.5 bar", Dimension.Pressure)).Quantity;
        var across = Size(Goal with
        {
            Supply = FuelSupply.ReturnlessControlled,
            RailTable = [new(0, 400_000), new(50_000, 400_000), new(150_000, 550_000)],
            Boost = boost
        }).PressureAcross;
        Assert.Equal((350_000m, 362_500m, 400_000m), (across.Low, across.Value, across.High)); // expected: rail 4.375 at 0.75
    }

    [Fact]
    public void Table_that_ends_below_the_goal_is_refused()
    {
        var question = Goal with { Supply = FuelSupply.ReturnlessControlled, RailTable = [new(0, 350_000), new(100_000, 450_000)] };
        var refused = Assert.IsType<SumRefused>(InjectorSizing.Size(question, [], BoostedTriple));
        Assert.Equal(("out-of-range", "rail-table", "0.00 bar … 1.00 bar of boost"), (refused.Code, refused.Field, refused.Found));
        Assert.Equal("rail-table", Assert.IsType<SumRefused>(InjectorSizing.Size(question with { Supply = FuelSupply.ReturnAmbient }, [],
            BoostedTriple)).Field);
    }

    [Fact]
    public void Supply_and_pressure_come_from_the_variant_where_they_are_left_out()
    {
        var question = Goal with { Pressure = null, Supply = null };
        IReadOnlyList<EngineFact> recorded = [.. BoostedTriple, Word("ts", "supply", "return-manifold"),
            new EngineFact("ts", "rail-pressure", Value("rail-pressure", "3.00 bar", Dimension.Pressure, spread: 0.05m).Reading, Document)];
        var sized = Assert.IsType<InjectorsSized>(InjectorSizing.Size(question, [], recorded));
        Assert.Equal(FuelSupply.ReturnManifold, sized.Asked.Supply);
        Assert.Equal("2.95 … 3.00 … 3.05 bar", sized.PressureAcross.Text);
        Assert.Contains(sized.Assumed, one => one.Name == "pressure");
        Assert.Equal(("not-recorded", "supply"), Refused(question));
        Assert.Equal(("not-recorded", "pressure"), Refused(question with { Supply = FuelSupply.ReturnManifold }));

        static (string, string) Refused(InjectorQuestion question) =>
            Assert.IsType<SumRefused>(InjectorSizing.Size(question, [], BoostedTriple)) is var refused ? (refused.Code, refused.Field) : default;
    }

    // 3.0 bar over the manifold is no pressure of a rail held over ambient.
    [Fact]
    public void Pressure_recorded_for_another_supply_does_not_count()
    {
        IReadOnlyList<EngineFact> recorded =
            [.. BoostedTriple, Word("ts", "supply", "return-manifold"), Amount("ts", "rail-pressure", "3.00 bar", Dimension.Pressure)];
        var question = Goal with { Pressure = null, Supply = FuelSupply.ReturnAmbient };
        Assert.Equal("pressure", Assert.IsType<SumRefused>(InjectorSizing.Size(question, [], recorded)).Field);
        Assert.IsType<InjectorsSized>(InjectorSizing.Size(question with { Supply = FuelSupply.ReturnManifold }, [], recorded));
    }

    // 3.5 bar without boost and 4.5 at 1.0: at 0.5 the rail stands at 4.00, and that is what was asked.
    [Fact]
    public void Pressure_asked_by_a_table_is_that_of_the_goal() => Assert.Equal("4.00 bar", Size(Goal with
    {
        Supply = FuelSupply.ReturnlessControlled,
        RailTable = [new(0, 350_000), new(100_000, 450_000)],
        Boost = Read("0.5 bar", Dimension.Pressure),
    }).Asked.Pressure.Text);

    // 4.0 bar at 1.1 bar of boost says nothing of what the control unit sets at other boost: neither that it falls, nor what is across at idle.
    [Fact]
    public void Controlled_rail_without_a_table_is_known_at_the_goal_only()
    {
        var sized = Size(Goal with
        {
            Supply = FuelSupply.ReturnlessControlled,
            Pressure = Read("4.0 bar", Dimension.Pressure),
            Displacement = Read("1600 cm3", Dimension.Volume),
            IdleSpeed = Read("850/min", Dimension.Speed),
        }, Injector("I-4401", "440 cm3/min"));
        Assert.Equal(["1.10 bar"], sized.PressureThrough.Select(row => row.Boost.Text));
        Assert.Contains(sized.Warnings, warning => warning.Code == "rail-table-not-given");
        Assert.DoesNotContain(sized.Warnings, warning => warning.Code == "pressure-falls-with-boost");
        Assert.Null(sized.Idle);
        Assert.Contains("give rail-table=", Assert.Single(sized.Injectors).Idle!.Because, StringComparison.Ordinal);
    }

    // Rail fixed at 4.0 bar: −0.66 bar 4.66 across, 0 4.00, 1.1 2.90; flow against that of the goal √(4.0 ÷ 2.9) = 117.4 %.
    [Fact]
    public void Pressure_through_the_boost_is_listed_for_both_regulators()
    {
        var through = Size(Goal with { Supply = FuelSupply.ReturnlessFixed, Pressure = Read("4.0 bar", Dimension.Pressure) }).PressureThrough;
        Assert.Equal(["4.66 bar", "4.00 bar", "3.73 bar", "3.45 bar", "3.18 bar", "2.90 bar"], through.Select(row => row.Across.Text));
        Assert.Equal("117.4 %", through[1].Flow.Text);
        Assert.All(through, row => Assert.Equal("4.00 bar", row.Referenced.Text));
    }

    // 85 % of 20 ms shut for 3 ms at 6000/min; two squirts halve it.
    [Fact]
    public void Time_shut_is_what_the_pulse_leaves_of_the_cycle()
    {
        var shut = InjectorTiming.ShutSeconds(Spread.Exactly(0.017), 1, Spread.Exactly(0.020));
        Near(0.003, shut.Expected, 1e-12);
        Near(0.0015, InjectorTiming.ShutSeconds(Spread.Exactly(0.017), 2, Spread.Exactly(0.020)).Expected, 1e-12);
        Assert.Equal(0, InjectorTiming.ShutSeconds(Spread.Exactly(0.021), 1, Spread.Exactly(0.020)).Expected);
    }
}

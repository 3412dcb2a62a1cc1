using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>The question as the sums take it.</summary>
internal sealed record SupplyGoal(InjectorGoal Goal, Quantity PumpVoltage, LineLoss Line, Figure Return)
{
    private static readonly Figure _usualReturn = new(0.10, 0.20, 0.30,
        "a regulator with a return holds its pressure only while fuel flows back: 10 … 20 … 30 % over what is burnt (common practice, no source)");

    private static readonly Figure _noReturn = new(0, 0, 0, "no return: the regulator sits at the pump, or the pump is slowed");

    /// <summary>Voltage at the pump where none is given.</summary>
    public const decimal UsualVolt = 13.5m;

    public Spread BurntM3S { get; } = Goal.FuelFlowKgS / Goal.Density.Spread;

    public Spread WantedM3S { get; } = Goal.FuelFlowKgS / Goal.Density.Spread * (Spread.Exactly(1) + Return.Spread);

    /// <summary>Lost on the way by what is wanted at the goal.</summary>
    public Spread LostPa { get; } = Line.At(Goal.FuelFlowKgS / Goal.Density.Spread * (Spread.Exactly(1) + Return.Spread));

    public Spread AtPumpPa => Goal.Rail.Gauge + LostPa;

    public static SupplyGoal Of(SupplyQuestion question, InjectorGoal goal) => new(
        goal,
        question.PumpVoltage ?? Quantity.From(UsualVolt, SumText.Volt),
        LineLoss.Of(question),
        question.Return is { } back ? new Figure(Spread.Of(back), "given in the question")
            : goal.Rail.Supply is FuelSupply.ReturnManifold or FuelSupply.ReturnAmbient ? _usualReturn : _noReturn);

    public PumpNeed AsNeed() => new(
        BurntM3S.In(SumText.LitresPerHour, "0.0"), WantedM3S.In(SumText.LitresPerHour, "0.0"), Goal.Rail.Gauge.In(SumText.Bars, "0.00"),
            AtPumpPa.In(SumText.Bars, "0.00"),
        (WantedM3S * AtPumpPa).In(UnitTable.Get("W"), "0.0"));

    public IEnumerable<WorkingStep> Working()
    {
        var (flow, burnt, wanted) = (SumText.InKilogramsPerHour(Goal.FuelFlowKgS.Expected), InLitres(BurntM3S.Expected), InLitres(WantedM3S.Expected));
        yield return new WorkingStep(
            "fuel flow", "power × BSFC", $"{SumText.In(SumText.Kilowatts, Goal.PowerW.Expected, "0.##")} × {SumText.InGramsPerKilowattHour(Goal.Bsfc.Spread.Expected)}", flow,
            "definition of specific consumption: Heywood 1988, 2.8 (from memory)");
        yield return new WorkingStep(
            "burnt, as volume", "fuel flow ÷ density", $"{flow} ÷ {SumText.Number(Goal.Density.Spread.Expected / 1000, "0.0000")} kg/L", burnt,
                Goal.Density.Source);
        yield return new WorkingStep("wanted of the pump", "burnt × (1 + return)", $"{burnt} × (1 + {SumText.InPercent(Return.Spread.Expected, "0.#")})",
            wanted, Return.Source);
        yield return Goal.Rail.Step();
        yield return Line.Step(WantedM3S);
        yield return new WorkingStep(
            "pressure at the pump", "rail gauge + loss of line and filter; not the pressure across an injector",
            $"{SumText.InBar(Goal.Rail.Gauge.Expected)} + {SumText.InBar(LostPa.Expected)}", SumText.InBar(AtPumpPa.Expected), "definition");
        yield return new WorkingStep(
            "hydraulic power", "flow × pressure at the pump", $"{wanted} × {SumText.InBar(AtPumpPa.Expected)} ÷ 36 W·h/(L·bar)",
            $"{SumText.Number(WantedM3S.Expected * AtPumpPa.Expected, "0.0")} W", "definition; 1 L/h at 1 bar is 1 ÷ 36 W");
    }

    public IReadOnlyList<Influence> Influences()
    {
        SumInput[] inputs = [new("power", Goal.PowerW), new("specific consumption", Goal.Bsfc.Spread), new("density of the fuel", Goal.Density.Spread),
            new("return", Return.Spread)];
        return SumRange.Influences(inputs, of => of[0] * of[1] / of[2] * (1 + of[3]), flow => SumText.In(SumText.LitresPerHour, flow, "0.0"));
    }

    public IEnumerable<Assumption> Assumed(SupplyQuestion question, InjectorEngine engine)
    {
        yield return new Assumption("bsfc", question.Goal.Bsfc ?? Goal.Bsfc.Spread.In(SumText.GramsPerKilowattHour, "0.#"), Goal.Bsfc.Source);
        yield return new Assumption("density", Goal.Density.Spread.In(SumText.KilogramsPerCubicMetre, "0.#"), Goal.Density.Source);
        yield return new Assumption("return", question.Return ?? Return.Spread.In(SumText.Percent, "0.#"), Return.Source);
        yield return new Assumption("line-loss", AskedLoss(question), Line.Loss.Source);
        foreach (var assumption in GoalAssumptions.Of(Goal, engine))
        {
            yield return assumption;
        }

        if (question.PumpVoltage is null)
        {
            yield return new Assumption("pump-voltage", Spread.Exactly((double)UsualVolt).In(SumText.Volt, "0.0"),
                "14 V of the alternator less half a volt in wire and relay (common practice, no source): measure at the pump");
        }

        if (question.Goal.Pressure is null && question.Goal.RailTable.Count == 0)
        {
            yield return new Assumption("pressure", Spread.Of(Goal.Rail.Pressure).In(SumText.Bars, "0.00"), "as recorded of this variant");
        }
    }

    /// <summary>At the flow where it was measured; the usual one where none was given.</summary>
    public QuantityRange AskedLoss(SupplyQuestion question) => question.LineLoss ?? Line.Loss.Spread.In(SumText.Bars, "0.00");

    private static string InLitres(double m3S) => SumText.In(SumText.LitresPerHour, m3S, "0.0");
}

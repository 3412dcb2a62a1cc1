using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>The question as the sums take it: every default filled in, every input a range.</summary>
/// <param name="DeadTime">What the need is reckoned with; an injector with a table of its own is judged by that, unless the question gives one.</param>
internal sealed record InjectorGoal(
    InjectorQuestion Question, Fuel Fuel, Figure Density, Figure Bsfc, KnownDeadTime DeadTime, RailPressure Rail, int Cylinders, int InjectorsPerCylinder,
        int Shots, Quantity Voltage)
{
    public Spread Duty { get; } = Spread.Of(Question.Duty);

    /// <summary>Length of a cycle, s; the slowest speed gives the longest.</summary>
    public Spread CycleS { get; } = Spread.Exactly(120) / Spread.Of(Question.Speed);

    public Spread PowerW { get; } = Spread.Of(Question.Power);

    public Spread VoltV { get; } = Spread.Of(Voltage);

    public Spread AcrossPa { get; } = Rail.Across;

    public Spread FuelFlowKgS { get; } = Bsfc.Spread * Spread.Of(Question.Power);

    public int Injectors => Cylinders * InjectorsPerCylinder;

    public Spread EffectiveDuty { get; } = InjectorTiming.EffectiveDuty(Spread.Of(Question.Duty), Shots, DeadTime.Seconds,
        Spread.Exactly(120) / Spread.Of(Question.Speed));

    /// <summary>Fills the defaults in. The question has been checked before: fuel, cylinders, pressure and supply are known.</summary>
    public static InjectorGoal Of(InjectorQuestion question, InjectorEngine engine, Fuel asked, int cylinders, FuelSupply supply, Quantity pressure)
    {
        var boosted = question.Boost.Value > 0 || engine.Induction == "boosted";
        var fuel = question.Ethanol is { } ethanol ? Blend.Of(asked, Spread.Of(ethanol)) : asked;
        return new InjectorGoal(
            question,
            fuel,
            question.FuelTemperature is { } kelvin ? FuelDensity.At(fuel, InCelsius(kelvin)) : fuel.Density,
            question.Bsfc is { } given ? new Figure(Spread.Of(given), "given in the question") : SpecificConsumption.Published(boosted, fuel),
            question.DeadTime is { } deadTime ? new KnownDeadTime(Spread.Of(deadTime), "given in the question, for every injector") : DeadTimes.CommonPractice,
            new RailPressure(supply, pressure, Spread.Of(pressure), Spread.Of(question.Boost), question.RailTable),
            cylinders,
            question.InjectorsPerCylinder ?? engine.InjectorsPerCylinder ?? 1,
            question.Shots ?? engine.Shots ?? 1,
            question.Voltage ?? Quantity.From(14, SumText.Volt));
    }

    /// <summary>The same, reckoned with another dead time: what hangs on it is worked out again.</summary>
    public InjectorGoal WithDeadTime(KnownDeadTime deadTime) =>
        new(Question, Fuel, Density, Bsfc, deadTime, Rail, Cylinders, InjectorsPerCylinder, Shots, Voltage);

    public InjectorsAsked AsAsked() => new(
        Question.Family, Question.Variant, Question.Power, Question.Speed,
        Question.Boost with { Text = $"{PressureText(Question.Boost)} over ambient" },
        Rail.Pressure with { Text = PressureText(Rail.Pressure) },
        Rail.Supply, Question.Duty.Value, Question.Fuel, Cylinders, InjectorsPerCylinder, Shots, Voltage, Question.Bsfc, Question.DeadTime)
    {
        DutyLimit = Question.Duty.Low is null ? null : Question.Duty,
        Ethanol = Question.Ethanol,
        FuelTemperature = Question.FuelTemperature,
        RailTable = Question.RailTable.Count == 0 ? null
            : string.Join(", ", Question.RailTable.Select(point => $"{SumText.InBar(point.RailPa)} at {SumText.InBar(point.BoostPa)} of boost")),
        StagedWith = Question.StagedWith?.Id,
    };

    // One way of writing bar; what was typed in another unit keeps it in front.
    private static string PressureText(Quantity pressure) => (pressure.Text.EndsWith(" bar", StringComparison.Ordinal), pressure.Low) switch
    {
        (true, null) => SumText.InBar(pressure.Value),
        (true, _) => SumText.InBar(Spread.Of(pressure)),
        _ => $"{pressure.Text} ({SumText.InBar(Spread.Of(pressure))})",
    };

    private static Spread InCelsius(QuantityRange kelvin) => Spread.Of(kelvin) - Spread.Exactly(273.15);
}

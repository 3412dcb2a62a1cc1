using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>The question as the sums take it: every default filled in.</summary>
/// <param name="DeadTime">What the need is reckoned with; an injector with a table of its own is judged by that, unless the question gives one.</param>
internal sealed record InjectorGoal(
    InjectorQuestion Question, Fuel Fuel, Figure Bsfc, KnownDeadTime DeadTime, decimal AcrossPa, int Cylinders, int InjectorsPerCylinder, int Shots, Quantity Voltage)
{
    private static readonly Unit _volt = UnitTable.Get("V");

    public double Duty { get; } = (double)Question.Duty.Value;

    public double CycleS { get; } = InjectorTiming.CycleSeconds((double)Question.Speed.Value);

    public double PowerW { get; } = (double)Question.Power.Value;

    public int Injectors => Cylinders * InjectorsPerCylinder;

    public Spread FuelFlowKgS => Bsfc.Spread * PowerW;

    public Spread EffectiveDuty => InjectorTiming.EffectiveDuty(Duty, Shots, DeadTime.Seconds, CycleS);

    /// <summary>Fills the defaults in. The question has been checked before: fuel and cylinders are known.</summary>
    public static InjectorGoal Of(InjectorQuestion question, InjectorEngine engine, Fuel fuel, int cylinders)
    {
        var boosted = question.Boost.Value > 0 || engine.Induction == "boosted";
        return new InjectorGoal(
            question,
            fuel,
            question.Bsfc is { } given ? new Figure(Spread.Of(given), "given in the question") : SpecificConsumption.Published(boosted, fuel),
            question.DeadTime is { } deadTime ? new KnownDeadTime(Spread.Of(deadTime), "given in the question, for every injector") : DeadTimes.CommonPractice,
            PressureAcross.Of(question.Supply, question.Pressure.Value, question.Boost.Value),
            cylinders,
            question.InjectorsPerCylinder ?? engine.InjectorsPerCylinder ?? 1,
            question.Shots ?? engine.Shots ?? 1,
            question.Voltage ?? Quantity.From(14, _volt));
    }

    public InjectorsAsked AsAsked() => new(
        Question.Family, Question.Variant, Question.Power, Question.Speed,
        Question.Boost with { Text = $"{PressureText(Question.Boost)} over ambient" },
        Question.Pressure with { Text = PressureText(Question.Pressure) },
        Question.Supply, Question.Duty.Value, Question.Fuel, Cylinders, InjectorsPerCylinder, Shots, Voltage, Question.Bsfc, Question.DeadTime);

    // One way of writing bar; what was typed in another unit keeps it in front.
    private static string PressureText(Quantity pressure) =>
        pressure.Text.EndsWith(" bar", StringComparison.Ordinal) ? SumText.InBar(pressure.Value) : $"{pressure.Text} ({SumText.InBar(pressure.Value)})";
}

using PartMatch.Core.Air;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>The goal of the injectors as a question about air, with the family's own variants beside it.</summary>
internal static class GoalAir
{
    // The last bits of a double make no goal another one.
    private const double Same = 1 + 1e-9;

    public static AirQuestion Of(InjectorGoal goal, InjectorEngine engine, IReadOnlyList<EngineFact> facts, IReadOnlyList<Variant> variants) => new(
        goal.Question.Air,
        goal.PowerW,
        Spread.Of(goal.Question.Speed),
        Spread.Of(goal.Question.Boost),
        goal.Bsfc.Spread,
        goal.Fuel,
        goal.Question.Boost.Value > 0 || engine.Induction == "boosted",
        (goal.Question.Displacement ?? engine.Displacement) is { } displacement ? Spread.Of(displacement) : null,
        engine.Stroke is { } stroke ? Spread.Of(stroke) : null,
        [.. facts.Select(fact => fact.Variant).Distinct(StringComparer.Ordinal).Select(variant =>
            Rated(variant, variants.FirstOrDefault(one => one.Code == variant)?.Name ?? variant, InjectorEngine.Read(facts, variant))).OfType<RatedVariant>()])
    {
        AlreadyDone = AlreadyDone(goal, engine),
    };

    // No more power, no more of it for each turn, no less boost, and nothing typed that makes it another engine or other air.
    private static string? AlreadyDone(InjectorGoal goal, InjectorEngine engine) =>
        engine is { RatedPower: { } power, RatedSpeed: { } speed } && goal.Question is { Displacement: null, Cylinders: null } question
            && question.Air with { MeasuredPressure = null, MeasuredTemperature = null } == new AirTyped()
            && goal.PowerW.High <= (double)power.Value * Same
            && goal.PowerW.High / Spread.Of(question.Speed).Low <= (double)(power.Value / speed.Value) * Same
            && Spread.Of(question.Boost).Low >= (double)(engine.BoostPa ?? 0)
            ? $"{power.Text} at {SumText.Number((double)speed.Value, "0.##")}/min"
            : null;

    private static RatedVariant? Rated(string variant, string name, InjectorEngine engine) =>
        engine is { RatedPower: { } power, RatedSpeed: { } speed, Displacement: { } displacement }
            ? new RatedVariant(
                variant, name, engine.Induction == "boosted", Spread.Of(power), Spread.Of(speed), Spread.Of(displacement), engine.Stroke is { } stroke
                    ? Spread.Of(stroke) : null,
                engine.RedlinePerMinute is { } redline ? Spread.Exactly((double)redline) : null)
            : null;
}

using PartMatch.Core.Air;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>The goal of the injectors as a question about air, with the family's own variants beside it.</summary>
internal static class GoalAir
{
    public static AirQuestion Of(InjectorGoal goal, InjectorEngine engine, IReadOnlyList<EngineFact> facts) => new(
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
            Rated(variant, InjectorEngine.Read(facts, variant))).OfType<RatedVariant>()]);

    private static RatedVariant? Rated(string variant, InjectorEngine engine) =>
        engine is { RatedPower: { } power, RatedSpeed: { } speed, Displacement: { } displacement }
            ? new RatedVariant(
                variant, engine.Induction == "boosted", Spread.Of(power), Spread.Of(speed), Spread.Of(displacement), engine.Stroke is { } stroke
                    ? Spread.Of(stroke) : null,
                engine.RedlinePerMinute is { } redline ? Spread.Exactly((double)redline) : null)
            : null;
}

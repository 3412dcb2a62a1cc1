using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>Which injectors does a goal need, and which of the catalogue are enough? For port injection on four-stroke engines.</summary>
/// <remarks>
/// flow = power × BSFC ÷ (injectors × effective duty); effective duty = duty − shots × dead time ÷ cycle time; flow ∝ √Δp; mass ↔ volume by
/// density; rated fluid against fuel by √density. Uncertainty of consumption, density, dead time and rating is carried as low, expected, high.
/// </remarks>
public static class InjectorSizing
{
    /// <summary>Sizes the goal and judges every injector, without the question whether it fits.</summary>
    /// <param name="injectors">The injectors of the catalogue; the answer keeps their order.</param>
    /// <param name="engineFacts">Facts of the variant asked about; those of other variants are passed over.</param>
    /// <returns><see cref="InjectorsSized"/>, or <see cref="SumRefused"/> with the reason.</returns>
    public static SumOutcome Size(InjectorQuestion question, IReadOnlyList<Part> injectors, IReadOnlyList<EngineFact> engineFacts)
    {
        var engine = InjectorEngine.Read(engineFacts, question.Variant);
        if (InjectorRefusals.OfQuestion(question, engine) is { } refused)
        {
            return refused;
        }

        // Checked just now: the fuel is known, and the cylinders are asked or recorded.
        var goal = InjectorGoal.Of(question, engine, Fuels.Find(question.Fuel)!, (question.Cylinders ?? engine.Cylinders)!.Value);
        return InjectorRefusals.OfGoal(goal) ?? (SumOutcome)Sized(goal, engine, injectors);
    }

    private static InjectorsSized Sized(InjectorGoal goal, InjectorEngine engine, IReadOnlyList<Part> injectors) => new(
        goal.AsAsked(),
        [.. Assumed(goal, engine)],
        new Quantity(goal.AcrossPa, "Pa", SumText.InBar(goal.AcrossPa)),
        InjectorNeed.Of(goal),
        InjectorNeed.Working(goal),
        [.. injectors.Select(part => InjectorJudgement.Of(goal, part))],
        [.. SizingWarnings.OfGoal(goal, engine)],
        Cautions.Of(goal.Fuel.IsAlcohol ? ["fuel-pressure", "residual-rail-pressure", "emissions-law", "alcohol-fuel"] : ["fuel-pressure", "residual-rail-pressure", "emissions-law"]));

    private static IEnumerable<Assumption> Assumed(InjectorGoal goal, InjectorEngine engine)
    {
        var question = goal.Question;
        yield return new Assumption("bsfc", question.Bsfc ?? goal.Bsfc.Spread.In(SumText.GramsPerKilowattHour, "0.#"), goal.Bsfc.Source);
        yield return new Assumption("density", goal.Fuel.Density.Spread.In(SumText.KilogramsPerCubicMetre, "0.#"), goal.Fuel.Density.Source);
        yield return new Assumption("dead-time", question.DeadTime ?? goal.DeadTime.Seconds.In(SumText.Milliseconds, "0.00"), goal.DeadTime.Source);
        yield return new Assumption("rated-density", RatedFluids.Heptane.Spread.In(SumText.KilogramsPerCubicMetre, "0.0"), RatedFluids.Heptane.Source);
        if (question.Voltage is null)
        {
            yield return new Assumption("voltage", Spread.Exactly(14).In(UnitTable.Get("V"), "0.0"), "alternator charging; also the voltage of SAE J1832 (from memory, medium confidence)");
        }

        if (question.InjectorsPerCylinder is null && engine.InjectorsPerCylinder is null)
        {
            yield return Count("injectors-per-cylinder", goal.InjectorsPerCylinder);
        }

        if (question.Shots is null && engine.Shots is null)
        {
            yield return Count("shots", goal.Shots);
        }
    }

    private static Assumption Count(string name, int count) =>
        new(name, Spread.Exactly(count).In(UnitTable.BaseOf(Dimension.Ratio), "0"), "not recorded for this variant; common practice, no source");
}

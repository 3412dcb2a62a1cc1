using PartMatch.Core.Air;
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
    /// <param name="variants">Of the family, for their names; one that is not among them is called by its code.</param>
    /// <returns><see cref="InjectorsSized"/>, or <see cref="SumRefused"/> with the reason.</returns>
    public static SumOutcome Size(InjectorQuestion question, IReadOnlyList<Part> injectors, IReadOnlyList<EngineFact> engineFacts,
        IReadOnlyList<Variant>? variants = null)
    {
        var engine = InjectorEngine.Read(engineFacts, question.Variant);
        var (goal, refused) = Prepare(question, engine, injectors);
        return refused ?? (SumOutcome)Sized(goal!, engine, injectors, engineFacts, variants ?? []); // one of the two is there
    }

    /// <summary>The goal with its defaults filled in, or why there is none.</summary>
    internal static (InjectorGoal? Goal, SumRefused? Refused) Prepare(InjectorQuestion question, InjectorEngine engine, IReadOnlyList<Part> injectors)
    {
        question = question.IsBoostLeftOut && engine.Boost is { } recorded ? question with { Boost = recorded } : question;
        if (InjectorRefusals.OfQuestion(question, engine) is { } refused)
        {
            return (null, refused);
        }

        // Checked just now: the fuel is known, the cylinders, the supply and the pressure are asked or recorded.
        // A table stands for the pressure: then the rail's at the boost of the goal is shown.
        var pressure = RailPoint.At(question.RailTable, (double)question.Boost.Value) is { } set
            ? new Quantity((decimal)set, "Pa", SumText.InBar(set))
            : (question.Pressure ?? engine.RailPressure)!;
        var goal = InjectorGoal.Of(
            question, engine, Fuels.Find(question.Fuel)!, (question.Cylinders ?? engine.Cylinders)!.Value, (question.Supply ?? engine.Supply)!.Value, pressure);
        goal = question.DeadTime is null ? goal.WithDeadTime(DeadTimes.OfCatalogue(injectors, goal.VoltV, goal.AcrossPa)) : goal;
        return InjectorRefusals.OfGoal(goal) is { } impossible ? (null, impossible) : (goal, null);
    }

    private static InjectorsSized Sized(InjectorGoal goal, InjectorEngine engine, IReadOnlyList<Part> injectors, IReadOnlyList<EngineFact> facts,
        IReadOnlyList<Variant> variants)
    {
        var (idle, idleNotKnown) = IdleNeed.Of(goal, engine);
        var second = StagedSecond.Of(goal);
        var air = AirCheck.Check(GoalAir.Of(goal, engine, facts, variants));
        return new InjectorsSized(
            goal.AsAsked(),
            [.. Assumed(goal, engine)],
            new Quantity((decimal)goal.AcrossPa.Expected, "Pa", SumText.InBar(goal.AcrossPa))
            {
                Low = goal.AcrossPa.IsExact ? null : (decimal)goal.AcrossPa.Low,
                High = goal.AcrossPa.IsExact ? null : (decimal)goal.AcrossPa.High,
            },
            InjectorNeed.Of(goal),
            [.. InjectorNeed.Working(goal), .. CylinderNeed.Working(goal, second), .. idle is null ? Array.Empty<WorkingStep>() : [idle.Working]],
            [.. injectors.Select(part => InjectorJudgement.Of(goal, second, idle, idleNotKnown, part))],
            [.. SizingWarnings.OfGoal(goal, engine), .. air.Warnings],
            Cautions.Of(goal.Fuel.IsAlcohol ? ["fuel-pressure", "residual-rail-pressure", "emissions-law", "alcohol-fuel"]
                : ["fuel-pressure", "residual-rail-pressure", "emissions-law"]))
        {
            Influences = InjectorNeed.Influences(goal),
            AirSide = air,
            PressureThrough = [.. PressureThrough.Of(goal)],
            Idle = idle?.AsWanted(goal),
            NeedPerCylinder = CylinderNeed.Of(goal, second),
        };
    }

    private static IEnumerable<Assumption> Assumed(InjectorGoal goal, InjectorEngine engine)
    {
        var question = goal.Question;
        yield return new Assumption("bsfc", question.Bsfc ?? goal.Bsfc.Spread.In(SumText.GramsPerKilowattHour, "0.#"), goal.Bsfc.Source);
        yield return new Assumption("density", goal.Density.Spread.In(SumText.KilogramsPerCubicMetre, "0.#"), goal.Density.Source);
        yield return new Assumption("dead-time", question.DeadTime ?? goal.DeadTime.Seconds.In(SumText.Milliseconds, "0.00"), goal.DeadTime.Source);
        yield return new Assumption("rated-density", RatedFluids.Heptane.Spread.In(SumText.KilogramsPerCubicMetre, "0.0"), RatedFluids.Heptane.Source);
        if (question.Pressure is null && question.RailTable.Count == 0)
        {
            yield return new Assumption("pressure", Spread.Of(goal.Rail.Pressure).In(SumText.Bars, "0.00"),
                $"{Codes.Of(goal.Rail.Supply)}, as recorded of this variant");
        }

        foreach (var assumption in GoalAssumptions.Of(goal, engine))
        {
            yield return assumption;
        }

        if (question.Voltage is null)
        {
            yield return new Assumption("voltage", Spread.Exactly(14).In(SumText.Volt, "0.0"),
                "alternator charging; also the voltage of SAE J1832 (from memory, not certain)");
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

using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>Does the fuel reach the injectors of a goal: pump, line, regulator and injectors, link by link?</summary>
/// <remarks>wanted = power × BSFC ÷ density × (1 + return); the pump sees rail gauge pressure + line loss, not the pressure across an injector.</remarks>
public static class SupplySizing
{
    /// <param name="injectors">Of the catalogue: what the dead time is taken from where the chosen one has none.</param>
    /// <param name="pumps">Of the catalogue; the answer keeps their order.</param>
    /// <param name="engineFacts">Of the family; those of other variants are passed over.</param>
    /// <returns><see cref="SupplySized"/>, or <see cref="SumRefused"/> with the reason.</returns>
    public static SumOutcome Size(SupplyQuestion question, IReadOnlyList<Part> injectors, IReadOnlyList<Part> pumps, IReadOnlyList<EngineFact> engineFacts)
    {
        var engine = InjectorEngine.Read(engineFacts, question.Goal.Variant);
        var (prepared, refused) = InjectorSizing.Prepare(question.Goal, engine, injectors);
        return refused ?? Bounds(question) ?? (SumOutcome)Sized(question, SupplyGoal.Of(question, prepared!), engine, pumps); // one of the two is there
    }

    private static SupplySized Sized(SupplyQuestion question, SupplyGoal goal, InjectorEngine engine, IReadOnlyList<Part> pumps)
    {
        var prepared = goal.Goal;
        var links = SupplyChain.Of(question, goal, IdleNeed.Of(goal.Goal, engine).Need);
        var asked = prepared.AsAsked();
        return new SupplySized(
            new SupplyAsked(asked.Family, asked.Variant, asked.Power, asked.Speed, asked.Boost, asked.Pressure, asked.Supply, asked.Duty, asked.Fuel,
                goal.PumpVoltage)
            {
                Injector = question.Injector?.Id,
                Pump = question.Pump?.Id,
                Regulator = question.Regulator?.Id,
                LineLoss = goal.AskedLoss(question),
                LineLossFlow = goal.Line.AtM3S,
                ReturnCapacity = question.ReturnCapacity,
            },
            [.. goal.Assumed(question, engine)],
            goal.AsNeed() with { InjectorsHeldOpen = HeldOpen(question, goal)?.In(SumText.LitresPerHour, "0.0") },
            links,
            ChainInWords.Of(links, prepared.PowerW.Expected),
            goal.Influences(),
            [.. goal.Working()],
            [.. pumps.Select(pump => PumpJudgement.Of(goal, pump))],
            [.. SupplyWarnings.Of(question, goal, engine)],
            Cautions.Of(["fuel-pressure", "residual-rail-pressure", "emissions-law", .. prepared.Fuel.IsAlcohol ? ["alcohol-fuel"] : Array.Empty<string>()]))
        {
            Goal = asked,
        };
    }

    private static Spread? HeldOpen(SupplyQuestion question, SupplyGoal goal)
    {
        if (question.Injector is not { } injector || InjectorRating.Of(injector) is not { FlowM3S: { } flow, FluidKgM3: { } fluid } rating)
        {
            return null;
        }

        var mass = OrificeFlow.MassFlow(flow, rating.PressurePa, fluid, goal.Goal.AcrossPa, goal.Goal.Density.Spread);
        var second = StagedSecond.Of(goal.Goal);
        return (second is { Reason: null } ? mass + second.FlowKgS : mass) * goal.Goal.Injectors / goal.Goal.Density.Spread;
    }

    private static SumRefused? Bounds(SupplyQuestion question) =>
        question.PumpVoltage is { } volt && (volt.Low ?? volt.Value) is <= 0 or > 60
            ? InjectorBounds.OutOfRange("pump-voltage", volt.Text, "above 0 and at most 60 V at the pump", "for example 13.5 V")
        : question.LineLoss is { } loss && (loss.Low < 0 || loss.High > 1_000_000)
            ? InjectorBounds.OutOfRange("line-loss", loss.Text, "0 bar … 10 bar at the flow of line-loss-flow", "for example 0.2 bar, or 0.1..0.2..0.4 bar")
        : question.LineLossFlow is { } at && (at.Low <= 0 || at.High > 1)
            ? InjectorBounds.OutOfRange("line-loss-flow", at.Text, "above 0 L/h", "for example 120 L/h")
        : question is { LineLoss.High: > 0, LineLossFlow: null }
            ? new SumRefused("not-recorded", "line-loss-flow",
                "A loss says nothing without the flow at which it was measured: it grows with the square of the flow.", "nothing",
                "the flow through the line when the loss was measured", "give it: line-loss-flow=120 L/h")
        : question is { LineLoss: null, LineLossFlow: not null }
            ? new SumRefused("not-recorded", "line-loss", "A flow through the line says nothing without the pressure lost there.", "nothing",
                "pressure at the pump − pressure at the rail, at that flow", "give it: line-loss=0.2 bar, or leave line-loss-flow out")
        : question.Return is { } back && (back.Low < 0 || back.High > 10 || (back.High > 1 && char.IsAsciiDigit(back.Text[^1])))
            // Five times what is burnt is possible and hardly what a bare 5 means.
            ? InjectorBounds.OutOfRange("return", back.Text, "0 % … 1000 % of what is burnt, above 100 % with its unit",
                InjectorBounds.PercentMeant(back.Text, back.Low >= 0 && back.High <= 1000) ?? "for example 20 %")
        : question.ReturnCapacity is { } capacity && (capacity.Low <= 0 || capacity.High > 1)
            ? InjectorBounds.OutOfRange("return-capacity", capacity.Text, "above 0 L/h", "for example 180 L/h")
        : null;
}

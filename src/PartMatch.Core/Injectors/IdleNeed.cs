using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>What idling asks of the injectors: little fuel, so a short squirt.</summary>
/// <param name="FuelFlowKgS">Of the whole engine.</param>
/// <param name="CycleS">At idle speed.</param>
/// <param name="AcrossPa">Under the vacuum of the manifold.</param>
internal sealed record IdleNeed(Spread FuelFlowKgS, Spread CycleS, Spread AcrossPa, WorkingStep Working)
{
    /// <summary>Petrol burnt at idle, m3/s for each m3 of displacement, at <see cref="PublishedAt"/>.</summary>
    /// <remarks>0.16 gal(US)/h of 2.0 L and 0.39 gal(US)/h of 4.6 L are 0.303 and 0.321 L/h for a litre; colder, older, wilder engines take more.</remarks>
    public static Figure PetrolPerDisplacement { get; } = new(
        new Spread(0.30, 0.45, 0.80) / 3600,
        "petrol for each litre of displacement, warm, no load: 0.30 … 0.32 L/h, US DOE Vehicle Technologies Fact 861, 2015 (2.0 and 4.6 litre cars); expected and high: common practice, no source");

    /// <summary>Speed that the published flow is taken at; in proportion to speed from there, as friction is what idling pays for (ours, no source).</summary>
    public const double PublishedAt = 700;

    /// <summary>Manifold gauge pressure at idle near sea level.</summary>
    public static Figure Manifold { get; } = new(-71_000, -66_000, -56_000, "30 … 35 … 45 kPa absolute at a warm idle (common practice, no source)");

    /// <summary>The need, or why it cannot be told.</summary>
    public static (IdleNeed? Need, string? NotKnown) Of(InjectorGoal goal, InjectorEngine engine)
    {
        var question = goal.Question;
        if ((question.Displacement ?? engine.Displacement) is not { } displacement)
        {
            return (null, "the displacement of this variant is not recorded: give displacement=");
        }

        if ((question.IdleSpeed ?? engine.IdleSpeed) is not { } idle)
        {
            return (null, "the idle speed of this variant is not recorded: give idle-speed=");
        }

        var manifold = question.IdleManifold is { } given ? Spread.Of(given) : Manifold.Spread;
        if (AcrossAt(goal.Rail, manifold) is not { } across)
        {
            return (null, goal.Rail.IsKnownAtGoalOnly ? "what the control unit sets the rail to at idle is not told: give rail-table= down to the vacuum there"
                : "the table of rail pressure does not reach down to the vacuum at idle");
        }

        var petrol = PetrolPerDisplacement.Spread * Spread.Of(displacement) * Spread.Of(idle) / PublishedAt * Fuels.Petrol.Density.Spread.Expected;
        var flow = SpecificConsumption.OnFuel(petrol, goal.Fuel);
        var step = new WorkingStep(
            "fuel flow at idle", "petrol for each litre × displacement × idle speed ÷ 700/min × density of petrol × heating value of petrol ÷ that of the fuel",
            $"{SumText.Number(PetrolPerDisplacement.Spread.Expected * 3600, "0.00")} L/h × {SumText.Number((double)displacement.Value * 1000, "0.000")} × {SumText.Number((double)idle.Value, "0")} ÷ 700"
            + $" × 0.745 kg/L × {SumText.Number(Fuels.Petrol.HeatingValue.Spread.Expected / 1e6, "0.00")} ÷ {SumText.Number(goal.Fuel.HeatingValue.Spread.Expected / 1e6, "0.00")}",
            SumText.In(SumText.KilogramsPerHour, flow.Expected, "0.000"), PetrolPerDisplacement.Source);
        return (new IdleNeed(flow, Spread.Exactly(120) / Spread.Of(idle), across, step), null);
    }

    public IdleWanted AsWanted(InjectorGoal goal) => new(
        FuelFlowKgS.In(SumText.KilogramsPerHour, "0.00"),
        AcrossPa.In(SumText.Bars, "0.00"),
        (FuelFlowKgS * CycleS / (goal.Injectors * goal.Shots)).In(UnitTable.Get("mg"), "0.0"));

    // Deeper vacuum, more pressure across, except where the regulator follows the manifold.
    private static Spread? AcrossAt(RailPressure rail, Spread manifold) =>
        rail.AcrossAt(manifold.High) is { } low && rail.AcrossAt(manifold.Expected) is { } expected && rail.AcrossAt(manifold.Low) is { } high
            ? new Spread(Math.Min(low.Low, high.Low), expected.Expected, Math.Max(low.High, high.High))
            : null;
}

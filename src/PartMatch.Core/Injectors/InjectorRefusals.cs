using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>The questions that have no honest answer.</summary>
internal static class InjectorRefusals
{
    private const string BothTogether = "A measured power is brought to the reference air by pressure and temperature together.";

    /// <summary>What is wrong with the question itself, or null.</summary>
    public static SumRefused? OfQuestion(InjectorQuestion question, InjectorEngine engine) =>
        OfFuelSystem(question, engine)
        ?? InjectorBounds.Check(question)
        ?? OfMeasured(question)
        ?? OfCounts(question)
        ?? OfFuel(question)
        ?? OfCylinders(question, engine)
        ?? OfSupply(question, engine);

    /// <summary>What is wrong once the sums are set up, or null.</summary>
    public static SumRefused? OfGoal(InjectorGoal goal)
    {
        var question = goal.Question;
        if (goal.AcrossPa.Low <= 0)
        {
            return new SumRefused(
                "no-pressure-across", "pressure", "The manifold pushes back as hard as the rail pushes: no fuel flows.",
                $"rail {SumText.InBar(goal.Rail.Gauge)} gauge, manifold {SumText.InBar(Spread.Of(question.Boost))} gauge: {SumText.InBar(goal.AcrossPa)} across",
                "rail pressure above manifold pressure",
                    "raise the rail pressure, or take a return rail with a regulator referenced to the manifold (supply=return-manifold)");
        }

        if (goal.EffectiveDuty.Low > 0)
        {
            return null;
        }

        var shut = goal.DeadTime.Seconds * goal.Shots;
        return new SumRefused(
            "no-time-to-inject", question.DeadTime is null && question.Shots is null ? "speed" : question.Shots is null ? "dead-time" : "shots",
            "The dead time of the shots takes up all the time there is.",
            $"{goal.Shots} × {goal.DeadTime.Seconds.In(SumText.Milliseconds, "0.00").Text} shut = {shut.In(SumText.Milliseconds, "0.00").Text}, open at most "
            + $"{SumText.InPercent(goal.Duty.Low, "0.0")} of {SumText.InMilliseconds(goal.CycleS.Low, "0.000")} = {SumText.InMilliseconds(goal.Duty.Low * goal.CycleS.Low, "0.000")}",
            "shots × dead time below duty × cycle time",
            "fewer shots a cycle, a lower speed, or the injector's real dead time (dead-time=)");
    }

    private static SumRefused? OfFuelSystem(InjectorQuestion question, InjectorEngine engine) => engine.FuelSystem switch
    {
        "carburetted" => new SumRefused(
            "carburetted", "variant", "This variant has a carburettor: it has no injectors, no rail and nothing to drive them.",
            $"{question.Variant}: carburetted", "a port-injected variant",
            "choose a port-injected variant as the target of the conversion"),
        "direct-injected" => new SumRefused(
            "direct-injected", "variant",
            "This variant injects into the cylinder: rail pressure is tens to hundreds of bar, the time window is part of a stroke, cylinder pressure pushes back. "
            + "These sums hold for port injection only.",
            $"{question.Variant}: direct-injected", "a port-injected variant", "ask a specialist for direct injection, or choose a port-injected variant"),
        _ => null,
    };

    // One of the two alone corrects nothing, and dropping it in silence would look as if it had.
    private static SumRefused? OfMeasured(InjectorQuestion question) => question.Air switch
    {
        { MeasuredPressure: not null, MeasuredTemperature: null } =>
            NotRecorded("measured-temperature", BothTogether, "the temperature of the air it drew", "give it: measured-temperature=30 degC"),
        { MeasuredPressure: null, MeasuredTemperature: not null } =>
            NotRecorded("measured-pressure", BothTogether, "the dry pressure of the air it drew", "give it: measured-pressure=98 kPa"),
        _ => null,
    };

    private static SumRefused? OfCounts(InjectorQuestion question) =>
        Count("cylinders", question.Cylinders) ?? Count("injectors-per-cylinder", question.InjectorsPerCylinder) ?? Count("shots", question.Shots);

    private static SumRefused? Count(string field, int? pieces) => pieces is null or (>= 1 and <= InjectorEngine.MostPieces)
        ? null
        : InjectorBounds.OutOfRange(field, SumText.Number(pieces.Value, "0"), $"a whole number, 1 to {SumText.Number(InjectorEngine.MostPieces, "0")}",
            "leave it out to take what the variant has");

    private static SumRefused? OfFuel(InjectorQuestion question)
    {
        if (Fuels.Find(question.Fuel) is not { } fuel)
        {
            return new SumRefused(
                "unknown-fuel", "fuel", "The sums know no density and heating value of this fuel.", question.Fuel,
                    $"one of {string.Join(", ", Fuels.All.Select(known => known.Code))}",
                "take the fuel that comes nearest");
        }

        if (question.Ethanol is { } ethanol && !Blend.Takes(fuel))
        {
            return InjectorBounds.OutOfRange("ethanol", $"{ethanol.Text} in {fuel.Name}", "petrol or E85 as the fuel",
                "leave ethanol out: a pure alcohol has no share of it to tell");
        }

        var limit = SpecificConsumption.ImpossibleBelow(fuel);
        return question.Bsfc is { } bsfc && bsfc.Low < limit
            ? new SumRefused(
                "bsfc-impossible", "bsfc", "More work would come out than there is heat in the fuel.", bsfc.Text,
                $"at least {SumText.InGramsPerKilowattHour(limit)}, where all the heat of {fuel.Name} would be work",
                "petrol engines lie at 250 … 380 g/(kW·h); leave bsfc out to take a published range")
            : null;
    }

    private static SumRefused? OfSupply(InjectorQuestion question, InjectorEngine engine)
    {
        if ((question.Supply ?? engine.Supply) is not { } supply)
        {
            return NotRecorded("supply", "How the rail of this variant is fed is not recorded.", string.Join(", ", Codes.All<FuelSupply>()),
                "give it: supply=return-manifold");
        }

        if (question.RailTable.Count == 0)
        {
            // A pressure recorded over the manifold says nothing of a rail held over ambient.
            return question.Pressure is null && (engine.RailPressure is null || supply != engine.Supply)
                ? NotRecorded("pressure", "The fuel pressure of this variant with this supply is not recorded.", "a gauge pressure", "give it: pressure=3.0 bar")
                : null;
        }

        var (first, last) = (question.RailTable[0], question.RailTable[^1]);
        return supply != FuelSupply.ReturnlessControlled
            ? InjectorBounds.OutOfRange("rail-table", Codes.Of(supply), "supply=returnless-controlled: only a rail that a control unit sets has a table",
                "leave rail-table out, or say supply=returnless-controlled")
            : Spread.Of(question.Boost) is var boost && boost.Low >= (double)first.BoostPa && boost.High <= (double)last.BoostPa
                ? null
                : InjectorBounds.OutOfRange("rail-table", $"{SumText.InBar(first.BoostPa)} … {SumText.InBar(last.BoostPa)} of boost",
                    $"a table that reaches {question.Boost.Text}: nothing is read beyond it", "add the point of the goal's boost");
    }

    private static SumRefused NotRecorded(string field, string reason, string expected, string mend) =>
        new("not-recorded", field, reason, "nothing", expected, mend);

    private static SumRefused? OfCylinders(InjectorQuestion question, InjectorEngine engine) =>
        question.Cylinders is not null || engine.Cylinders is not null
            ? null
            : new SumRefused(
                "cylinders-not-recorded", "cylinders", "The number of cylinders of this variant is not recorded.", "nothing", "a whole number",
                    "give it: cylinders=3");
}

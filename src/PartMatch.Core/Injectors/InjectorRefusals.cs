using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>The questions that have no honest answer.</summary>
internal static class InjectorRefusals
{
    /// <summary>What is wrong with the question itself, or null.</summary>
    public static SumRefused? OfQuestion(InjectorQuestion question, InjectorEngine engine) =>
        OfFuelSystem(question, engine)
        ?? OfValues(question)
        ?? OfCounts(question)
        ?? OfFuel(question)
        ?? OfCylinders(question, engine);

    /// <summary>What is wrong once the sums are set up, or null.</summary>
    public static SumRefused? OfGoal(InjectorGoal goal)
    {
        var question = goal.Question;
        if (goal.AcrossPa <= 0)
        {
            return new SumRefused(
                "no-pressure-across", "pressure", "The manifold pushes back as hard as the rail pushes: no fuel flows.",
                $"rail {SumText.InBar(question.Pressure.Value)} gauge, manifold {SumText.InBar(question.Boost.Value)} gauge: {SumText.InBar(goal.AcrossPa)} across",
                "rail pressure above manifold pressure", "raise the rail pressure, or take a return rail with a regulator referenced to the manifold (supply=return-manifold)");
        }

        if (goal.EffectiveDuty.Low > 0)
        {
            return null;
        }

        var shut = goal.DeadTime.Seconds * goal.Shots;
        return new SumRefused(
            "no-time-to-inject", question.DeadTime is null && question.Shots is null ? "speed" : question.Shots is null ? "dead-time" : "shots",
            "The dead time of the squirts takes up all the time there is.",
            $"{goal.Shots} × {goal.DeadTime.Seconds.In(SumText.Milliseconds, "0.00").Text} shut = {shut.In(SumText.Milliseconds, "0.00").Text}, open at most "
            + $"{SumText.InPercent(goal.Duty, "0.0")} of {SumText.InMilliseconds(goal.CycleS, "0.000")} = {SumText.InMilliseconds(goal.Duty * goal.CycleS, "0.000")}",
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

    private static SumRefused? OfValues(InjectorQuestion question) =>
        Positive("power", question.Power, "for example 180 kW")
        ?? Positive("speed", question.Speed, "for example 6800/min")
        ?? Positive("pressure", question.Pressure, "gauge, for example 3.0 bar")
        ?? (question.Voltage is { } voltage ? Positive("voltage", voltage, "for example 14 V") : null)
        ?? (question.Boost.Value > -101_325
            ? null
            : Range("boost", question.Boost.Text, "above −1.013 bar: it is a gauge pressure, 0 without boost", "boost over ambient, for example 1.1 bar"))
        ?? (question.Duty.Value is > 0 and <= 1 ? null : Range("duty", question.Duty.Text, "above 0 and at most 100 %: an injector cannot be open longer than always", "for example 85 %"))
        ?? (question.DeadTime is null or { Low: >= 0 } ? null : Range("dead-time", question.DeadTime.Text, "0 ms or more", "for example 0.92 ms, or 0.8..0.9..1.1 ms"));

    private static SumRefused? Positive(string field, Quantity quantity, string example) =>
        quantity.Value > 0 ? null : Range(field, quantity.Text, "above 0", example);

    private static SumRefused? OfCounts(InjectorQuestion question) =>
        Count("cylinders", question.Cylinders) ?? Count("injectors-per-cylinder", question.InjectorsPerCylinder) ?? Count("shots", question.Shots);

    private static SumRefused? Count(string field, int? pieces) => pieces is null or (>= 1 and <= InjectorEngine.MostPieces)
        ? null
        : Range(field, SumText.Number(pieces.Value, "0"), $"a whole number, 1 to {SumText.Number(InjectorEngine.MostPieces, "0")}", "leave it out to take what the variant has");

    private static SumRefused Range(string field, string found, string expected, string mend) =>
        new("out-of-range", field, $"The {field} is outside what it can be.", found, expected, mend);

    private static SumRefused? OfFuel(InjectorQuestion question)
    {
        if (Fuels.Find(question.Fuel) is not { } fuel)
        {
            return new SumRefused(
                "unknown-fuel", "fuel", "The sums know no density and heating value of this fuel.", question.Fuel, $"one of {string.Join(", ", Fuels.All.Select(known => known.Code))}",
                "take the fuel that comes nearest");
        }

        var limit = SpecificConsumption.ImpossibleBelow(fuel);
        return question.Bsfc is { } bsfc && bsfc.Low < limit
            ? new SumRefused(
                "bsfc-impossible", "bsfc", "More work would come out than there is heat in the fuel.", bsfc.Text,
                $"at least {SumText.InGramsPerKilowattHour(limit)}, where all the heat of {fuel.Name} would be work",
                "petrol engines lie at 250 … 380 g/(kW·h); leave bsfc out to take a published range")
            : null;
    }

    private static SumRefused? OfCylinders(InjectorQuestion question, InjectorEngine engine) =>
        question.Cylinders is not null || engine.Cylinders is not null
            ? null
            : new SumRefused(
                "cylinders-not-recorded", "cylinders", "The number of cylinders of this variant is not recorded.", "nothing", "a whole number", "give it: cylinders=3");
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Supply;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Supply;

/// <summary>Invented pumps and regulators, written as a book would have them.</summary>
internal static class SupplyExamples
{
    public static readonly InjectorQuestion HillClimbGoal = HillClimb with { Bsfc = ReadRange("300..330..380 g/(kW·h)", Dimension.SpecificConsumption) };

    /// <summary>165 L/h at 4.0 bar and 13.5 V, 152 at 4.5, 138 at 5.0; at 12 V 139, 128, 116; relief 8.0 ± 0.2 bar.</summary>
    public static readonly Part Pump = Make("P-1", "e10|e85|petrol", "8.0 bar", (12, 4.0m, 139), (12, 4.5m, 128), (12, 5.0m, 116), (13.5m, 4.0m, 165),
        (13.5m, 4.5m, 152), (13.5m, 5.0m, 138));

    public static Part Make(string number, string? wetted, string? relief, params (decimal Volt, decimal Bar, decimal LitresPerHour)[] flow)
    {
        var values = new List<RecordedValue>();
        if (wetted is not null)
        {
            values.Add(new RecordedValue("wetted-for", new ChoicesReading(wetted.Split('|')), Document));
        }

        if (relief is not null)
        {
            values.Add(Value("relief-pressure", relief, Dimension.Pressure, spread: 0.2m));
        }

        CurvePoint[] curve =
        [
            .. flow.Select(point => new CurvePoint(
                "flow", point.Volt, UnitTable.Get("V"), point.Bar * 100_000, UnitTable.Get("bar"), UnitTable.Get("L/h").ToBase(point.LitresPerHour),
                    UnitTable.Get("L/h"), Document)),
        ];
        return new Part($"harl:{number}", "harl", number, NumberKey.Of(number), "fuel-pump", "Pump", null, Document, values, curve);
    }

    public static Part Regulator(string set, string reference) => new(
        "harl:R-1", "harl", "R-1", "R1", "fuel-regulator", "Regulator", null, Document,
        [Value("set-pressure", set, Dimension.Pressure, spread: 0.05m), new RecordedValue("reference", new ChoiceReading(reference), Document)], []);

    public static SupplySized Size(SupplyQuestion question, params IReadOnlyList<Part> pumps) =>
        Assert.IsType<SupplySized>(SupplySizing.Size(question, [], pumps, BoostedTriple));

    public static SupplyQuestion Ask(InjectorQuestion? goal = null) => new(goal ?? HillClimbGoal)
    {
        Pump = Pump,
        Regulator = Regulator("3.00 bar", "manifold"),
        Injector = Injector("I-5501", "550 cm3/min", deadTimes: Always(0.92m)),
    };

    /// <summary>With a loss measured at a flow.</summary>
    public static SupplyQuestion Losing(this SupplyQuestion question, string loss, string at = "100 L/h") =>
        question with { LineLoss = ReadRange(loss, Dimension.Pressure), LineLossFlow = ReadRange(at, Dimension.VolumeFlow) };

    /// <summary>A regulator that passes so much.</summary>
    public static Part Passing(this Part regulator, string flow) =>
        regulator with { Values = [.. regulator.Values, Value("return-capacity", flow, Dimension.VolumeFlow)] };

    public static SupplyLink Link(SupplySized sized, string name) => sized.Links.Single(link => link.Link == name);
}

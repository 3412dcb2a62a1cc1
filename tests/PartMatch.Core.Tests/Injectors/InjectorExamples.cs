using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Injectors;

/// <summary>Invented engines and injectors, written as a book would have them.</summary>
internal static class InjectorExamples
{
    public static readonly Evidence Document = Source("ev-0001", EvidenceGrade.MakersDocument);

    /// <summary>180 kW at 6800/min with 1.1 bar of boost, 3.0 bar held over the manifold, 85 %, petrol, three cylinders.</summary>
    public static readonly InjectorQuestion HillClimb = new(
        "tern-16", "ts", Read("180 kW", Dimension.Power), Read("6800/min", Dimension.Speed), Read("1.1 bar", Dimension.Pressure), Read("3.0 bar", Dimension.Pressure),
        FuelSupply.ReturnManifold, Read("85 %", Dimension.Ratio), "petrol-e0");

    public static readonly IReadOnlyList<EngineFact> BoostedTriple =
    [
        Word("ts", "fuel-system", "port-injected"), Word("ts", "induction", "boosted"), Count("ts", "cylinders", 3), Count("ts", "injectors-per-cylinder", 1),
        Count("ts", "shots-per-cycle", 1), Amount("ts", "boost", "0.80 bar", Dimension.Pressure), Amount("ts", "redline", "7200/min", Dimension.Speed),
    ];

    /// <summary>A question without boost whose dead time is zero, so that only the textbook sum is left.</summary>
    public static InjectorQuestion Textbook(string power, string bsfc, int cylinders, string duty) => HillClimb with
    {
        Power = Read(power, Dimension.Power),
        Bsfc = ReadRange(bsfc, Dimension.SpecificConsumption),
        Cylinders = cylinders,
        Duty = Read(duty, Dimension.Ratio),
        DeadTime = ReadRange("0 ms", Dimension.Time),
        Boost = Read("0 bar", Dimension.Pressure),
    };

    public static InjectorsSized Size(InjectorQuestion question, params IReadOnlyList<Part> injectors) =>
        Assert.IsType<InjectorsSized>(InjectorSizing.Size(question, injectors, BoostedTriple));

    public static SizedInjector Judge(InjectorQuestion question, Part injector) => Assert.Single(Size(question, injector).Injectors);

    /// <summary>An injector; a null leaves that fact out.</summary>
    public static Part Injector(
        string number, string? flow, string? pressure = "3.00 bar", string? fluid = "n-heptane", IReadOnlyList<CurvePoint>? deadTimes = null, params IReadOnlyList<RecordedValue> more)
    {
        var values = new List<RecordedValue>(more);
        if (flow is not null)
        {
            values.Add(Value("rated-flow", flow, Dimension.VolumeFlow));
        }

        if (pressure is not null)
        {
            values.Add(Value("rated-pressure", pressure, Dimension.Pressure));
        }

        if (fluid is not null)
        {
            values.Add(new RecordedValue("rated-fluid", new ChoiceReading(fluid), Document));
        }

        values.Add(Value("rated-temperature", "20 degC", Dimension.Temperature));
        values.Add(Value("rated-voltage", "14.0 V", Dimension.Voltage));
        return new Part($"harl:{number}", "harl", number, NumberKey.Of(number), "injector", "Injector", null, Document, values, deadTimes ?? []);
    }

    public static RecordedValue Value(string feature, string text, Dimension dimension, Evidence? evidence = null, decimal? spread = null)
    {
        var read = Assert.IsType<QuantityRead>(QuantityParser.Parse(text, dimension));
        var allowed = spread is { } written ? read.Unit.DifferenceToBase(written) : (decimal?)null;
        return new RecordedValue(feature, new QuantityReading(read.Quantity.Value, allowed, allowed, null, read.Unit, text), evidence ?? Document);
    }

    /// <summary>One value for every voltage and pressure near 14 V and 3 bar.</summary>
    public static IReadOnlyList<CurvePoint> Always(decimal milliseconds) =>
        [.. from volt in new[] { 8m, 16m } from bar in new[] { 1m, 6m } select Dead(volt, bar, milliseconds)];

    public static CurvePoint Dead(decimal volt, decimal? bar, decimal milliseconds, Evidence? evidence = null) => new(
        "dead-time", volt, UnitTable.Get("V"), bar * 100_000, UnitTable.Get("bar"), milliseconds / 1000, UnitTable.Get("ms"), evidence ?? Document);

    public static Quantity Read(string text, Dimension dimension) => Assert.IsType<QuantityRead>(QuantityParser.Parse(text, dimension)).Quantity;

    public static QuantityRange ReadRange(string text, Dimension dimension) => Assert.IsType<RangeRead>(QuantityRangeParser.Parse(text, dimension)).Range;

    public static Evidence Source(string code, EvidenceGrade grade, string? retractedOn = null) => new(code, grade, "2026-02", "bench 2", "bench sheet", null, retractedOn, null);

    public static EngineFact Word(string variant, string property, string word) => new(variant, property, new ChoiceReading(word), Document);

    public static EngineFact Count(string variant, string property, int count) =>
        new(variant, property, new CountReading(count, count.ToString(CultureInfo.InvariantCulture)), Document);

    public static EngineFact Amount(string variant, string property, string text, Dimension dimension) => new(variant, property, Value(property, text, dimension).Reading, Document);

    public static double In(string unit, double value) => value / (double)UnitTable.Get(unit).Factor;

    public static void Near(double expected, double actual, double relative) => Assert.Equal(expected, actual, Math.Abs(expected) * relative);
}

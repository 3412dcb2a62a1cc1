using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;

namespace PartMatch.Benchmarks.Injectors;

/// <summary>Invented injectors with everything recorded: rating with tolerances, and a dead-time table of four voltages by three pressures.</summary>
internal static class InjectorCatalogue
{
    private static readonly Evidence _document = new("ev-0001", EvidenceGrade.MakersDocument, "2026-02", "bench 2", "bench sheet", null, null, null);

    /// <summary>180 kW at 6800/min and 1.1 bar of boost, with every input a range.</summary>
    public static InjectorQuestion Goal { get; } = new(
        "tern-16", "ts", Ranged(180_000, 5_000, "W", "175 … 180 … 185 kW"), Ranged(6800, 100, "1/min", "6700 … 6800 … 6900/min"), Ranged(110_000, 5_000, "Pa", "1.05 … 1.10 … 1.15 bar"),
        Ranged(300_000, 5_000, "Pa", "2.95 … 3.00 … 3.05 bar"), FuelSupply.ReturnManifold, new Quantity(0.85m, "1", "85 %"), "petrol-e0")
    {
        Voltage = Ranged(13.5m, 0.5m, "V", "13.0 … 13.5 … 14.0 V"),
    };

    public static IReadOnlyList<EngineFact> Engine { get; } =
    [
        Word("fuel-system", "port-injected"), Word("induction", "boosted"), Count("cylinders", 3), Count("injectors-per-cylinder", 1), Count("shots-per-cycle", 1),
        Amount("boost", 0.80m, "bar"), Amount("redline", 6500, "1/min"), Amount("displacement", 1600.2m, "cm3"), Amount("stroke", 94, "mm"), Amount("idle-speed", 850, "1/min"),
    ];

    /// <param name="count">How many; flows from 150 to 1149 cm3/min come round again after 1000.</param>
    public static IReadOnlyList<Part> Of(int count) => [.. Enumerable.Range(0, count).Select(Injector)];

    private static Part Injector(int index)
    {
        var number = string.Create(CultureInfo.InvariantCulture, $"I-{index:00000}");
        return new Part($"harl:{number}", "harl", number, NumberKey.Of(number), "injector", "Injector", null, _document,
            [
                Value("rated-flow", 150 + (index * 7 % 1000), 6, "cm3/min"), Value("rated-pressure", 3.0m, 0, "bar"),
                new RecordedValue("rated-fluid", new ChoiceReading("n-heptane"), _document), Value("rated-temperature", 21, 0, "degC"), Value("rated-voltage", 14, 0, "V"),
                Value("smallest-linear-pulse", 1.5m, 0.05m, "ms"),
            ],
            [.. from volt in new[] { 8m, 11m, 14m, 16m } from bar in new[] { 2.5m, 3.0m, 4.0m } select Dead(volt, bar)]);
    }

    private static CurvePoint Dead(decimal volt, decimal bar) => new(
        "dead-time", volt, UnitTable.Get("V"), bar * 100_000, UnitTable.Get("bar"), 0.0008m * 14 / volt * (0.85m + (0.05m * bar)), UnitTable.Get("ms"), _document);

    private static Quantity Ranged(decimal value, decimal spread, string unit, string text) => new(value, unit, text) { Low = value - spread, High = value + spread };

    private static RecordedValue Value(string feature, decimal value, decimal spread, string unit) => new(feature, Reading(value, spread, unit), _document);

    private static QuantityReading Reading(decimal value, decimal spread, string symbol)
    {
        var unit = UnitTable.Get(symbol);
        return new QuantityReading(unit.ToBase(value), unit.DifferenceToBase(spread), unit.DifferenceToBase(spread), null, unit, string.Create(CultureInfo.InvariantCulture, $"{value} {symbol}"));
    }

    private static EngineFact Word(string property, string word) => new("ts", property, new ChoiceReading(word), _document);

    private static EngineFact Count(string property, int count) => new("ts", property, new CountReading(count, count.ToString(CultureInfo.InvariantCulture)), _document);

    private static EngineFact Amount(string property, decimal value, string unit) => new("ts", property, Reading(value, 0, unit), _document);
}

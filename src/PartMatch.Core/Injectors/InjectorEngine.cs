using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>What the sums need to know of the engine as built; null = not recorded.</summary>
/// <param name="FuelSystem"><c>port-injected</c>, <c>direct-injected</c> or <c>carburetted</c>.</param>
/// <param name="Induction"><c>natural</c> or <c>boosted</c>.</param>
/// <param name="BoostPa">Gauge pressure it was built for.</param>
internal sealed record InjectorEngine(
    string? FuelSystem, string? Induction, int? Cylinders, int? InjectorsPerCylinder, int? Shots, decimal? BoostPa, decimal? RedlinePerMinute)
{
    /// <summary>More cylinders, injectors or squirts than any engine has; keeps the sums away from absurd counts.</summary>
    public const int MostPieces = 64;

    /// <summary>Code of the fuel it was built for.</summary>
    public string? Fuel { get; init; }

    public FuelSupply? Supply { get; init; }

    /// <summary>As <see cref="FuelSupply"/> says for its supply, with what the maker allows.</summary>
    public Quantity? RailPressure { get; init; }

    /// <summary>Gauge pressure it was built for, with what the maker allows; null where it is none or not recorded.</summary>
    public Quantity? Boost { get; init; }

    public Quantity? IdleSpeed { get; init; }

    /// <summary>Of the whole engine; from bore, stroke and cylinders where it is not recorded itself.</summary>
    public Quantity? Displacement { get; init; }

    public Quantity? Stroke { get; init; }

    public Quantity? RatedPower { get; init; }

    public Quantity? RatedSpeed { get; init; }

    public static InjectorEngine Read(IReadOnlyList<EngineFact> facts, string variant)
    {
        KnownValue Of(string property) => facts
            .Where(fact => fact.Variant == variant && fact.Property == property)
            .Select(fact => ValueSelection.Of(fact.Reading, fact.Evidence))
            .FirstOrDefault(value => value is StatedValue, NotRecorded.Instance);
        string? Word(string property) => Of(property) is StatedChoices { Choices: [var word] } ? word : null;
        int? Count(string property) => Of(property) is StatedCount { Value: >= 1 and <= MostPieces and var count } ? (int)count : null;
        decimal? Amount(string property) => Of(property) is StatedQuantity quantity ? quantity.Nominal : null;

        return new InjectorEngine(
            Word("fuel-system"), Word("induction"), Count("cylinders"), Count("injectors-per-cylinder"), Count("shots-per-cycle"), Amount("boost"),
                Amount("redline"))
        {
            Fuel = Word("fuel"),
            Supply = Word("supply") is { } supply ? Codes.Find<FuelSupply>(supply) : null,
            RailPressure = Positive(Of("rail-pressure")),
            Boost = Positive(Of("boost")),
            IdleSpeed = Positive(Of("idle-speed")),
            Displacement = Positive(Of("displacement")) ?? Swept(Amount("bore"), Amount("stroke"), Count("cylinders")),
            Stroke = Positive(Of("stroke")),
            RatedPower = Positive(Of("rated-power")),
            RatedSpeed = Positive(Of("rated-speed")),
        };
    }

    // The maker's spread stands as a range: a regulator of 3.00 ± 0.05 bar is not known any better.
    private static Quantity? Positive(KnownValue value) => value is StatedQuantity { Nominal: > 0, Possible: { Low: > 0 and var low, High: { } high } } quantity
        ? new Quantity(quantity.Nominal, UnitTable.BaseOf(quantity.Unit.Dimension).Symbol, quantity.Text)
        {
            Low = low == high ? null : low,
            High = low == high ? null : high
        }
        : null;

    private static Quantity? Swept(decimal? bore, decimal? stroke, int? cylinders)
    {
        if (bore is not { } acrossM || stroke is not { } strokeM || cylinders is not { } count)
        {
            return null;
        }

        var swept = (decimal)Math.PI / 4 * acrossM * acrossM * strokeM * count;
        return new Quantity(swept, "m3", FormattableString.Invariant($"{swept * 1_000_000:0.0} cm³"));
    }
}

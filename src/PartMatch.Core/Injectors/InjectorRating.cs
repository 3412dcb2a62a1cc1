using System.Runtime.CompilerServices;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;

namespace PartMatch.Core.Injectors;

/// <summary>An injector's rating as the sums take it: what is not recorded is a range, or nothing.</summary>
/// <param name="FlowM3S">Null when no flow can be reckoned with.</param>
/// <param name="FluidKgM3">Null when the fluid is recorded but the sums know no density of it.</param>
/// <param name="SmallestLinearPulseS">Null when not recorded.</param>
internal sealed record InjectorRating(
    RatedAs As, Spread? FlowM3S, Spread PressurePa, Spread? FluidKgM3, Spread? SmallestLinearPulseS, IReadOnlyList<MissingFact> Missing)
{
    // Ratings stand at 2.5, 3.0, 3.5, 3.8 and 4.0 bar. Common practice, no source.
    private static readonly Spread _usualPressurePa = new(250_000, 300_000, 400_000);

    // Parts are immutable, and every goal reads the same catalogue.
    private static readonly ConditionalWeakTable<Part, InjectorRating> _read = [];

    public static InjectorRating Of(Part part) => _read.GetValue(part, Read);

    private static InjectorRating Read(Part part)
    {
        var missing = new List<MissingFact>();
        var (flow, pressure, fluid) = (ValueSelection.Of(part, "rated-flow"), ValueSelection.Of(part, "rated-pressure"),
            ValueSelection.Of(part, "rated-fluid"));
        if (Positive(flow) is null)
        {
            missing.Add(new MissingFact("rated-flow", $"The rated flow is {Why(flow)}: no sum can be done."));
        }

        if (Positive(pressure) is null)
        {
            missing.Add(new MissingFact("rated-pressure",
                $"The pressure of its rating is {Why(pressure)}: taken as 2.5 … 3.0 … 4.0 bar (common practice, no source)."));
        }

        var density = FluidDensity(fluid, missing);
        foreach (var (feature, what) in (ReadOnlySpan<(string, string)>)[("rated-temperature", "temperature"), ("rated-voltage", "voltage")])
        {
            if (ValueSelection.Of(part, feature) is not StatedValue)
            {
                missing.Add(new MissingFact(feature, $"The {what} of its rating is not recorded: the sums do not use it, but the rating is less sure."));
            }
        }

        return new InjectorRating(
            new RatedAs(Text(flow), Text(pressure), Text(fluid)), Positive(flow), Positive(pressure) ?? _usualPressurePa, density,
            Positive(ValueSelection.Of(part, "smallest-linear-pulse")), missing);
    }

    private static Spread? FluidDensity(KnownValue fluid, List<MissingFact> missing)
    {
        if (fluid is not StatedChoices { Choices: [var code] })
        {
            missing.Add(new MissingFact("rated-fluid",
                $"The fluid of its rating is {Why(fluid)}: taken as anything from n-heptane to the densest petrol (683.8 … 775 kg/m³)."));
            return RatedFluids.NotRecorded.Spread;
        }

        if (RatedFluids.Find(code) is { } known)
        {
            return known.Spread;
        }

        missing.Add(new MissingFact("rated-fluid", $"The density of {code}, the fluid of its rating, is not known here: no sum can be done."));
        return null;
    }

    // With the maker's spread and the uncertainty of the reading; a figure of zero or less is no rating.
    private static Spread? Positive(KnownValue value) =>
        value is StatedQuantity { Possible: { Low: > 0 and var low, High: { } high } } quantity
            ? new Spread((double)low, (double)quantity.Nominal, (double)high) : null;

    private static string? Text(KnownValue value) => value switch
    {
        StatedValue stated => stated.Text,
        DisputedValue disputed => $"disputed: {disputed.Text}",
        _ => null,
    };

    private static string Why(KnownValue value) => value switch
    {
        DisputedValue disputed => $"disputed ({disputed.Text})",
        StatedValue stated => $"no usable figure ({stated.Text})",
        _ => "not recorded",
    };
}

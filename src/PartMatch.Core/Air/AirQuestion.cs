using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;

namespace PartMatch.Core.Air;

/// <summary>What was said of the air; what is null is filled in by a published range or by common practice. Base units.</summary>
public sealed record AirTyped
{
    /// <summary>Height above the sea, m.</summary>
    public QuantityRange? Altitude { get; init; }

    /// <summary>Of the air in the manifold, K.</summary>
    public QuantityRange? ChargeTemperature { get; init; }

    /// <summary>Against the air in the manifold, 1 = filled with it.</summary>
    public QuantityRange? VolumetricEfficiency { get; init; }

    /// <summary>Air-fuel ratio ÷ stoichiometric.</summary>
    public QuantityRange? Lambda { get; init; }

    /// <summary>Dry, absolute, where the power was measured, Pa.</summary>
    public QuantityRange? MeasuredPressure { get; init; }

    /// <summary>Of the air where the power was measured, K.</summary>
    public QuantityRange? MeasuredTemperature { get; init; }
}

/// <summary>Can the air carry this goal?</summary>
/// <param name="BoostPa">Manifold pressure over ambient.</param>
/// <param name="Bsfc">The same consumption as the fuel side is reckoned with, kg/J.</param>
/// <param name="DisplacementM3">Of the whole engine; null when not known.</param>
/// <param name="StrokeM">Null when not known.</param>
/// <param name="Variants">The family's own, as far as they are rated.</param>
internal sealed record AirQuestion(
    AirTyped Typed, Spread PowerW, Spread SpeedPerMinute, Spread BoostPa, Spread Bsfc, Fuel Fuel, bool Boosted, Spread? DisplacementM3, Spread? StrokeM,
        IReadOnlyList<RatedVariant> Variants)
{
    /// <summary>The recorded rating of this very variant, where it asks no less of the air than the goal does; else null.</summary>
    public string? AlreadyDone { get; init; }
}

/// <summary>A variant of the family at its rating; null where not recorded.</summary>
/// <param name="Variant">Its code.</param>
/// <param name="Name">As a person calls it.</param>
internal sealed record RatedVariant(string Variant, string Name, bool Boosted, Spread PowerW, Spread SpeedPerMinute, Spread DisplacementM3, Spread? StrokeM,
    Spread? RedlinePerMinute);

using PartMatch.Core.Air;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;

namespace PartMatch.Core.Injectors;

/// <summary>Which injectors does this goal need? Quantities in base units, each one value or a range, with the text they were typed as.</summary>
/// <param name="Power">At the crank.</param>
/// <param name="Speed">At which that power is made.</param>
/// <param name="Boost">Manifold gauge pressure there; 0 without boost. Not looked at where <see cref="IsBoostLeftOut"/> and the variant has one recorded.</param>
/// <param name="Pressure">Fuel pressure; what it is the pressure of depends on the supply. Null: as recorded of the variant.</param>
/// <param name="Supply">Null: as recorded of the variant.</param>
/// <param name="Duty">Largest share of the time an injector may be open.</param>
/// <param name="Fuel">Code of <see cref="Fuels"/>.</param>
public sealed record InjectorQuestion(
    string Family, string Variant, Quantity Power, Quantity Speed, Quantity Boost, Quantity? Pressure, FuelSupply? Supply, Quantity Duty, string Fuel)
{
    /// <summary>The boost that is recorded of the variant is taken.</summary>
    public bool IsBoostLeftOut { get; init; }

    /// <summary>Specific consumption on the fuel asked for; else a published range by induction.</summary>
    public QuantityRange? Bsfc { get; init; }

    /// <summary>Stands for the dead time of every injector; else each one's own table counts.</summary>
    public QuantityRange? DeadTime { get; init; }

    /// <summary>Squirts of one injector in a cycle; else as the variant has it.</summary>
    public int? Shots { get; init; }

    public int? Cylinders { get; init; }

    public int? InjectorsPerCylinder { get; init; }

    /// <summary>At the injectors; else 14 V.</summary>
    public Quantity? Voltage { get; init; }

    /// <summary>Share of ethanol by volume, 0 to 1, of petrol or E85; else the standard's range of the fuel.</summary>
    public QuantityRange? Ethanol { get; init; }

    /// <summary>Of the fuel at the injectors, K; else the published densities stand as they are.</summary>
    public QuantityRange? FuelTemperature { get; init; }

    /// <summary>Rail pressure over boost, rising boost, for a rail that a control unit sets; else one pressure.</summary>
    public IReadOnlyList<RailPoint> RailTable { get; init; } = [];

    /// <summary>A second injector in each cylinder that opens beside the one judged, above idle; else none.</summary>
    public Part? StagedWith { get; init; }

    /// <summary>Else as the variant has it.</summary>
    public Quantity? IdleSpeed { get; init; }

    /// <summary>Manifold gauge pressure at idle, Pa, so negative; else common practice.</summary>
    public QuantityRange? IdleManifold { get; init; }

    /// <summary>What was said of the air, for the check of the goal.</summary>
    public AirTyped Air { get; init; } = new();

    /// <summary>Of the whole engine; else as the variant has it.</summary>
    public Quantity? Displacement { get; init; }
}

using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;

namespace PartMatch.Core.Injectors;

/// <summary>Which injectors does this goal need? Quantities in base units, with the text they were typed as.</summary>
/// <param name="Power">At the crank.</param>
/// <param name="Speed">At which that power is made.</param>
/// <param name="Boost">Manifold gauge pressure there; 0 without boost.</param>
/// <param name="Pressure">Fuel pressure; what it is the pressure of depends on <paramref name="Supply"/>.</param>
/// <param name="Duty">Largest share of the time an injector may be open.</param>
/// <param name="Fuel">Code of <see cref="Fuels"/>.</param>
public sealed record InjectorQuestion(
    string Family, string Variant, Quantity Power, Quantity Speed, Quantity Boost, Quantity Pressure, FuelSupply Supply, Quantity Duty, string Fuel)
{
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
}

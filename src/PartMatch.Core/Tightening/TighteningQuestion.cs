using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Tightening;

/// <summary>What does a torque, recorded or typed, do to a bolt? Everything typed overrides what is recorded.</summary>
public sealed record TighteningQuestion
{
    /// <summary>The place whose fastener is asked about; null where everything is typed.</summary>
    public FastenerPlace? Place { get; init; }

    /// <summary>As typed: M10×1.25.</summary>
    public string? Thread { get; init; }

    public PropertyClass? Class { get; init; }

    public Lubrication? Lubrication { get; init; }

    /// <summary>Base unit, or null where only the records are asked about.</summary>
    public QuantityRange? Torque { get; init; }

    /// <summary>By which it is turned on after the torque; only to be told that there is no sum for it.</summary>
    public Quantity? Angle { get; init; }

    /// <summary>Measured on such a joint; stands for what the state of the threads says.</summary>
    public QuantityRange? NutFactor { get; init; }

    /// <summary>Either way, as a share; null for the usual.</summary>
    public Quantity? Scatter { get; init; }
}

/// <param name="Variant">A variant of the family.</param>
/// <param name="Part">Sits there instead of what the maker fitted; null for that.</param>
public sealed record FastenerPlace(FamilyFacts Facts, string Variant, Position Position, Part? Part);

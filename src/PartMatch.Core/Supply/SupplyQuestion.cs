using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Supply;

/// <summary>Does the fuel reach the injectors of this goal?</summary>
/// <param name="Goal">The same goal as the injectors are sized for.</param>
public sealed record SupplyQuestion(InjectorQuestion Goal)
{
    /// <summary>The injectors of the chain; null when none is known.</summary>
    public Part? Injector { get; init; }

    /// <summary>The pump of the chain; null when none is known.</summary>
    public Part? Pump { get; init; }

    /// <summary>The regulator of the chain; null when none is known.</summary>
    public Part? Regulator { get; init; }

    /// <summary>At the pump; else 13.5 V.</summary>
    public Quantity? PumpVoltage { get; init; }

    /// <summary>Pressure lost between pump and rail at <see cref="LineLossFlow"/>, Pa; else common practice, from which no limit is drawn.</summary>
    public QuantityRange? LineLoss { get; init; }

    /// <summary>Flow through the line at which that loss was measured, m3/s.</summary>
    public QuantityRange? LineLossFlow { get; init; }

    /// <summary>What flows back to the tank at the goal ÷ what is burnt; else common practice for rails with a return, nothing for others.</summary>
    public QuantityRange? Return { get; init; }

    /// <summary>Flow that regulator and return line carry back without the pressure rising, m3/s; else as recorded of the regulator.</summary>
    public QuantityRange? ReturnCapacity { get; init; }
}

/// <summary>What the maker fitted where a role is.</summary>
public static class FittedByRole
{
    /// <summary>The one part that every such engine of the variant has at the position of a role; null where none, several or nothing recorded.</summary>
    public static Part? Find(FamilyFacts facts, string variant, string role) =>
        facts.Positions.FirstOrDefault(position => position.Role == role) is { } place
        && facts.FitmentsAt(variant, place.Code).Select(fitment => fitment.Part).Distinct().ToList() is [{ } part]
            ? facts.FindPart(part)
            : null;
}

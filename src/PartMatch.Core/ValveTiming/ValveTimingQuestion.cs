using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.ValveTiming;

/// <summary>When do the valves of this variant open and close with these camshafts, set like this, and what is trapped then?</summary>
public sealed record ValveTimingQuestion(string Variant)
{
    public LobeQuestion Intake { get; init; } = new();

    public LobeQuestion Exhaust { get; init; } = new();

    /// <summary>The valve lift that every event of the question is stated at, m; 1 mm when null, as books record it.</summary>
    public Quantity? AtLift { get; init; }

    public QuantityRange? CompressionRatio { get; init; }

    public QuantityRange? Stroke { get; init; }

    public QuantityRange? RodLength { get; init; }

    /// <summary>Turns of the crank for one of the wheel that the teeth are counted on; 2 when null.</summary>
    public Quantity? CrankTurns { get; init; }

    /// <summary>The trapped compression ratio that is looked for; null when none is.</summary>
    public Quantity? WantedTrapped { get; init; }
}

/// <summary>What the question says of one camshaft. Null = as the variant, or the part, has it.</summary>
public sealed record LobeQuestion
{
    public Part? Camshaft { get; init; }

    /// <summary>The sprocket, gear or phaser on it.</summary>
    public Part? Wheel { get; init; }

    /// <summary>Before its dead centre, degrees of the crank.</summary>
    public QuantityRange? Opens { get; init; }

    /// <summary>After its dead centre.</summary>
    public QuantityRange? Closes { get; init; }

    /// <summary>Where its lobe centre is set with a degree wheel: after top dead centre for intake, before it for exhaust.</summary>
    public QuantityRange? Centre { get; init; }

    /// <summary>Degrees of the crank; negative = retarded.</summary>
    public QuantityRange? Advance { get; init; }

    /// <summary>Teeth off its mark, advanced; negative = retarded.</summary>
    public int Teeth { get; init; }

    public int? WheelTeeth { get; init; }

    public QuantityRange? PhaserRange { get; init; }

    public PhaserRest? PhaserRest { get; init; }

    /// <summary>When it is wanted to open.</summary>
    public QuantityRange? WantedOpens { get; init; }

    public QuantityRange? WantedCloses { get; init; }

    /// <summary>Does it say anything that only an engine with a camshaft of its own for these valves can have?</summary>
    internal bool ShiftsOrFits =>
        Camshaft is not null || Wheel is not null || Centre is not null || Advance is not null || Teeth != 0 || WheelTeeth is not null
            || PhaserRange is not null || PhaserRest is not null;
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Compression;

/// <summary>
/// What compression has this variant with these parts, skimmed like this, and what is trapped of it? Null = as the variant, or the part, has it.
/// </summary>
public sealed record CompressionQuestion(string Variant)
{
    public Part? Head { get; init; }

    public Part? HeadGasket { get; init; }

    public Part? Piston { get; init; }

    public Part? IntakeCamshaft { get; init; }

    public QuantityRange? Bore { get; init; }

    public QuantityRange? Stroke { get; init; }

    public QuantityRange? RodLength { get; init; }

    /// <summary>Crankshaft centre to the block's face.</summary>
    public QuantityRange? DeckHeight { get; init; }

    /// <summary>Pin centre to crown edge.</summary>
    public QuantityRange? CompressionHeight { get; init; }

    /// <summary>Crown edge below the block's face at top dead centre, measured; stands in place of the four lengths.</summary>
    public QuantityRange? DeckClearance { get; init; }

    public QuantityRange? ChamberVolume { get; init; }

    /// <summary>Dish positive, dome negative.</summary>
    public QuantityRange? BowlVolume { get; init; }

    public QuantityRange? GasketThickness { get; init; }

    public QuantityRange? GasketBore { get; init; }

    public QuantityRange? HeadSkim { get; init; }

    public QuantityRange? BlockSkim { get; init; }

    /// <summary>Opening of the chamber at the face of the head; the bore's area when null.</summary>
    public QuantityRange? ChamberArea { get; init; }

    /// <summary>How deep the squish land lies below the face of the head; level with it when null.</summary>
    public QuantityRange? LandDepth { get; init; }

    /// <summary>Degrees of the crank after bottom dead centre.</summary>
    public QuantityRange? IntakeCloses { get; init; }

    /// <summary>Of the intake camshaft; negative = retarded.</summary>
    public QuantityRange? IntakeAdvance { get; init; }

    /// <summary>Only what the maker fitted on the engines of that stretch counts; null for all of them.</summary>
    internal EngineSpan? On { get; init; }

    /// <summary>The geometric ratio that is looked for; null when none is.</summary>
    public Quantity? WantedRatio { get; init; }
}

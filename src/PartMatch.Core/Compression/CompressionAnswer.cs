using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Compression;

/// <summary>The compression of an engine, built up volume by volume, and what is trapped of it.</summary>
/// <param name="Parts">What it was reckoned with.</param>
/// <param name="Volumes">Of one cylinder, in the order of the sum.</param>
/// <param name="Ratio">Geometric.</param>
/// <param name="Squish">Between a flat land of the head and the flat of the crown, cold and at rest.</param>
/// <param name="IdealEfficiency">Of the air-standard cycle over that ratio: an upper bound that no engine reaches, to compare two ratios by.</param>
/// <param name="Changes">What differs from the variant as built, in words.</param>
/// <param name="Variants">The family's own variants as built, as a yardstick; ordered by code.</param>
/// <param name="Influences">On the trapped ratio, or on the geometric one where that is not known; greatest first.</param>
public sealed record CompressionAnswer(
    CompressionAsked Asked,
    IReadOnlyList<RolePart> Parts,
    IReadOnlyList<Assumption> Assumed,
    IReadOnlyList<VolumeTerm> Volumes,
    QuantityRange Ratio,
    QuantityRange Squish,
    QuantityRange IdealEfficiency,
    IReadOnlyList<string> Changes,
    IReadOnlyList<VariantYardstick> Variants,
    IReadOnlyList<Influence> Influences,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<SumWarning> Warnings,
    IReadOnlyList<Caution> Cautions) : SumOutcome
{
    /// <summary>Trapped ratio; absent where the intake closing or the rod is not known.</summary>
    public QuantityRange? Trapped { get; init; }

    /// <summary>After bottom dead centre, at 1 mm unless the question gives its own.</summary>
    public QuantityRange? IntakeCloses { get; init; }

    /// <summary>The ratio of the variant as built, from its own parts; absent where they are not all recorded.</summary>
    public QuantityRange? AsBuiltRatio { get; init; }

    public QuantityRange? AsBuiltSquish { get; init; }

    /// <summary>The ratio that is recorded of the variant.</summary>
    public QuantityRange? RecordedRatio { get; init; }

    /// <summary>What the base wants of the squish here; absent where no stack says so.</summary>
    public SquishWanted? SquishWanted { get; init; }

    /// <summary>What a squish, inside a band or not, says nothing about.</summary>
    public string SquishSays { get; init; } = "";

    /// <summary>Ways to the ratio wanted; empty where none was.</summary>
    public IReadOnlyList<WantedWay> Wanted { get; init; } = [];

    /// <summary>Drawings of this answer; the door fills them in.</summary>
    public IReadOnlyList<PlotLink> Plots { get; init; } = [];

    /// <summary>The engine whose trapped ratio is drawn over the closing; null where it is not known.</summary>
    internal TrappedCurve? Curve { get; init; }

    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question with its defaults filled in.</summary>
public sealed record CompressionAsked(string Family, string Variant, QuantityRange HeadSkim, QuantityRange BlockSkim, Quantity? WantedRatio);

/// <summary>One volume of the sum.</summary>
/// <param name="AsBuilt">Of the variant with its own parts; absent where not recorded.</param>
public sealed record VolumeTerm(string Name, QuantityRange? AsBuilt, QuantityRange Volume);

/// <summary>The band that a stack of the base wants.</summary>
/// <param name="Stack">Its code.</param>
public sealed record SquishWanted(string Stack, string Band, string? Evidence);

/// <summary>One way to a wanted ratio, with the squish that it leaves.</summary>
/// <param name="Amount">What the thing would be; absent where this way does not lead there, or only to a crown that meets the head.</param>
public sealed record WantedWay(string What, QuantityRange? Amount, QuantityRange? Squish, string Text)
{
    /// <summary>Does the squish reach outside what the base wants, or below what is usual? The text says which.</summary>
    public bool IsSquishFlagged { get; init; }
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;

namespace PartMatch.Core.Compression;

/// <summary>Do two engines run on the same fuel and the same boost?</summary>
public enum SameCharge
{
    Yes,
    No,
    NotKnown,
}

/// <summary>One variant of the family as built, to measure another engine by. Members that are not recorded are absent.</summary>
/// <param name="Charge">Has it the fuel and boost of the engine asked about? Only then is the ratio a like for like.</param>
public sealed record VariantYardstick(string Variant, string Name, bool IsAsked, SameCharge Charge)
{
    public string? Fuel { get; init; }

    public string? Boost { get; init; }

    public QuantityRange? CompressionRatio { get; init; }

    /// <summary>At 1 mm, after bottom dead centre.</summary>
    public QuantityRange? IntakeCloses { get; init; }

    public QuantityRange? Overlap { get; init; }

    public QuantityRange? Trapped { get; init; }

    /// <summary>End-of-compression pressure of the engine asked about ÷ this one's, from the same pressure at the closing.</summary>
    public QuantityRange? EndOfCompression { get; init; }

    internal double? TrappedExpected => Trapped?.Expected;
}

/// <summary>The family's own variants as built. Their expected figures are the yardstick: what their maker drew.</summary>
internal static class FamilyYardsticks
{
    /// <param name="trapped">Of the engine asked about; null where not known.</param>
    public static IReadOnlyList<VariantYardstick> Of(FamilyFacts facts, string asked, Spread? trapped) =>
        [.. facts.Variants.Select(variant => Of(facts, variant, asked, trapped))];

    private static VariantYardstick Of(FamilyFacts facts, Variant variant, string asked, Spread? trapped)
    {
        var engine = EngineGeometry.Read(facts, variant.Code);
        var (intake, exhaust) = AsBuiltEvents.Find(facts, variant.Code);
        var own = engine is { Ratio.Figure: { } ratio, Stroke.Figure: { } stroke, Rod.Figure: { } rod } && intake is { } lobe
            ? TrappedCompression.Of(ratio.Spread, stroke.Spread, rod.Spread, lobe.Closes)
            : (Spread?)null;
        return new VariantYardstick(variant.Code, variant.Name, variant.Code == asked, ChargeOf(facts, variant.Code, asked))
        {
            Fuel = LookedUp.FindWord(facts, variant.Code, "fuel"),
            Boost = LookedUp.Fact(facts, variant.Code, "boost") is { Figure: not null, Found: var boost } ? boost : null,
            CompressionRatio = engine.Ratio.Figure is { } figure ? GeometryText.RangeOfRatio(figure.Spread) : null,
            IntakeCloses = intake is { } closing ? TimingText.IntakeCloses(closing.Closes) : null,
            Overlap = intake is { } one && exhaust is { } other ? GeometryText.RangeInDegrees(LobeEvents.Overlap(one, other)) : null,
            Trapped = own is { } known ? GeometryText.RangeOfRatio(known) : null,
            EndOfCompression = trapped is { } here && own is { } there ? GeometryText.RangeOfRatio(EndOfCompression.Ratio(here, there.Expected)) : null,
        };
    }

    private static SameCharge ChargeOf(FamilyFacts facts, string variant, string asked)
    {
        var (fuel, other) = (LookedUp.FindWord(facts, variant, "fuel"), LookedUp.FindWord(facts, asked, "fuel"));
        var (boost, otherBoost) = (LookedUp.Fact(facts, variant, "boost").Figure, LookedUp.Fact(facts, asked, "boost").Figure);
        return fuel is null || other is null || boost is null || otherBoost is null ? SameCharge.NotKnown
            : fuel == other && boost.Spread.Expected == otherBoost.Spread.Expected ? SameCharge.Yes
            : SameCharge.No;
    }
}

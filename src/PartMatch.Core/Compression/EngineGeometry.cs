using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Compression;

/// <summary>What is recorded of the crank drive of a variant, or typed instead.</summary>
internal sealed record EngineGeometry(LookedUp Ratio, LookedUp Bore, LookedUp Stroke, LookedUp Rod, LookedUp DeckHeight, LookedUp DeckClearance)
{
    public static EngineGeometry Read(FamilyFacts facts, string variant)
    {
        LookedUp Fact(string property) => LookedUp.Fact(facts, variant, property);
        return new EngineGeometry(Fact("compression-ratio"), Fact("bore"), Fact("stroke"), Fact("rod-length"), Fact("deck-height"), Fact("deck-clearance"));
    }

    /// <summary>Stroke and rod as the crank drive needs them, or what is wrong with them.</summary>
    public static SumRefused? FindFault(Spread stroke, Spread rod) => rod.Low > stroke.High / 2
        ? null
        : new SumRefused(
            "out-of-range", "rod-length", "A rod that is not longer than the throw of the crank cannot turn.", GeometryText.RangeInMm(rod).Text,
            $"more than half the stroke, {GeometryText.InMm(stroke.High / 2)}", "rod-length is from centre to centre");
}

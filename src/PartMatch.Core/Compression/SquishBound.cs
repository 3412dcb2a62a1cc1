using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>What a squish is held against: the stack of the base that adds gasket and piston up, else the usual lower figure of the trade.</summary>
internal sealed record SquishBound(double? LowM, double? HighM, SquishWanted? Wanted)
{
    public const string Measure =
        "A band is what one source builds to, no clearance that holds by itself: cold and at rest this is, and it narrows with speed and heat as rods stretch "
        + "and pistons rock. Measure it with soft metal over the crown, the gasket tightened.";

    private const string Wide =
        "a squish that is too wide stirs the charge less and lets the rim burn last, which can bring knock at the same ratio (common practice, no source)";

    // 0.035 in with steel rods, cold. Common practice, no source.
    private const double UsualLeastM = 0.0009;

    // Sums of binary fractions miss a bound that they lie on by less than this.
    private const double DustM = 1e-9;

    public static SquishBound Of(FamilyFacts facts, string variant)
    {
        var (gasket, piston) = (Sums.RoleParts.FindPosition(facts, Roles.HeadGasket), Sums.RoleParts.FindPosition(facts, Roles.Piston));
        bool Adds(Stack stack, Position? position, string feature) =>
            position is not null && stack.Terms.OfType<FeatureTerm>().Any(term => term.At == new FeatureAt(position.Code, feature));
        var stack = facts.Stacks.FirstOrDefault(one =>
            one.HoldsFor(variant) && one.Evidence?.IsRetracted != true && Adds(one, gasket, "compressed-thickness") && Adds(one, piston, "compression-height"));
        return stack is null ? new SquishBound(UsualLeastM, null, null)
            : new SquishBound(
                (double?)stack.Band.Low, (double?)stack.Band.High, new SquishWanted(stack.Code, FitWording.Text(stack.Band, stack.Unit), stack.Evidence?.Code));
    }

    /// <summary>What speaks against that squish, its range included; null where nothing does. No word for it means that it is right.</summary>
    public string? Says(Spread squish) =>
        squish.Low >= (LowM ?? double.MinValue) - DustM && squish.High <= (HighM ?? double.MaxValue) + DustM ? null
        : Wanted is { } band ? $"the base wants {band.Band} here ({band.Stack}{(band.Evidence is null ? "" : $", {band.Evidence}")})"
            + (squish.High > (HighM ?? double.MaxValue) + DustM ? $"; {Wide}" : "")
        : $"usual is {InMm(UsualLeastM)} and more with steel rods, cold (common practice, no source; the base records none here)";
}

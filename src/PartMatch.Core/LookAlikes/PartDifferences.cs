using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>A feature with different recorded values.</summary>
/// <param name="Matters">Something reads the feature (<see cref="MatteringFeatures"/>), and the two values have nothing in common, tolerances and all.</param>
public sealed record PartDifference(string Feature, string Name, string Asked, string Other, bool Matters);

/// <summary>In which recorded features do two parts of one kind differ, and which checks show it?</summary>
internal static class PartDifferences
{
    /// <summary>What matters first, then by feature. What is not recorded on both, or disputed, is no difference.</summary>
    public static IReadOnlyList<PartDifference> Between(MatteringFeatures mattering, Kind kind, Part asked, Part other) =>
    [
        .. Compared(kind, asked, other)
            .Where(pair => IsWrittenOtherwise(pair.Asked, pair.Other))
            .Select(pair => new PartDifference(
                pair.Feature.Code, pair.Feature.Name, FitWording.Text(pair.Asked), FitWording.Text(pair.Other), Matters(mattering, kind, pair.Feature, pair.Asked, pair.Other)))
            .OrderByDescending(difference => difference.Matters).ThenBy(difference => difference.Feature, StringComparer.Ordinal),
    ];

    /// <summary>
    /// Can a buyer's eye not separate them? They agree in every feature that a photo or the eye shows, at least one being recorded on both
    /// and none on one only, and differ in a feature that matters.
    /// </summary>
    public static bool AreSameToTheEye(MatteringFeatures mattering, Kind kind, Part asked, Part other)
    {
        var seen = 0;
        foreach (var check in kind.Checks.Where(check => check.Method is Method.Photo or Method.Eye))
        {
            var (left, right) = (ValueSelection.Of(asked, check.Feature), ValueSelection.Of(other, check.Feature));
            if (left is NotRecorded && right is NotRecorded)
            {
                continue;
            }

            if (Separates(check, left, right) != Met.No)
            {
                return false;
            }

            seen++;
        }

        return seen > 0 && Compared(kind, asked, other).Any(pair => Matters(mattering, kind, pair.Feature, pair.Asked, pair.Other));
    }

    /// <summary>Would the check show which of the two it is? Not known where a value or the check's uncertainty is not recorded.</summary>
    /// <remarks>Either reading may be off by the uncertainty, so the two values must lie further apart than twice that.</remarks>
    public static Met Separates(Check check, KnownValue left, KnownValue right) => (left, right) switch
    {
        (StatedQuantity, StatedQuantity) when check.Uncertainty is null && check.Method != Method.Label =>
            Apart(left, right, 0) == Met.No ? Met.No : Met.NotKnown,
        _ => Apart(left, right, check.Uncertainty ?? 0), // a label is read, not measured, and a choice or a count has no uncertainty
    };

    /// <summary>The features of the kind as recorded on both, ordered by feature; curves are not compared.</summary>
    public static IEnumerable<(Feature Feature, KnownValue Asked, KnownValue Other)> Compared(Kind kind, Part asked, Part other) =>
        kind.Features.Where(feature => feature.Type != FeatureType.Curve)
            .Select(feature => (feature, ValueSelection.Of(asked, feature.Code), ValueSelection.Of(other, feature.Code)))
            .Where(pair => pair is { Item2: StatedValue, Item3: StatedValue });

    private static bool Matters(MatteringFeatures mattering, Kind kind, Feature feature, KnownValue asked, KnownValue other) =>
        mattering.Contains(kind, feature.Code) && Apart(asked, other, 0) == Met.Yes;

    private static Met Apart(KnownValue left, KnownValue right, decimal uncertainty) => (left, right) switch
    {
        (StatedQuantity one, StatedQuantity two) => FeatureComparison.AsMet(!one.Possible.Widened(uncertainty).Meets(two.Possible.Widened(uncertainty))),
        (StatedCount one, StatedCount two) => FeatureComparison.AsMet(Math.Abs(one.Value - two.Value) > 2 * uncertainty),
        (StatedChoices, StatedChoices) => FeatureComparison.AsMet(FeatureComparison.Compare(left, Relation.Same, right, 0) == Met.No),
        _ => Met.NotKnown,
    };

    private static bool IsWrittenOtherwise(KnownValue left, KnownValue right) => (left, right) switch
    {
        (StatedQuantity one, StatedQuantity two) => one.Nominal != two.Nominal,
        _ => Apart(left, right, 0) == Met.Yes,
    };
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Variants;

/// <summary>In which features do the parts fitted on several variants differ?</summary>
internal static class FeatureDifferences
{
    /// <summary>Features that differ or are not known to agree, with effect first by rule, then by code.</summary>
    /// <remarks>A variant without a part at the position takes no part in it: that the part is missing is the position's status.</remarks>
    public static IReadOnlyList<FeatureDifference> Between(FamilyFacts facts, Position position, IReadOnlyList<VariantFitted> fitted)
    {
        var kind = facts.GetKind(position.Kind);
        var carrying = fitted.Where(one => one.State == FittedState.Fitted).ToList();
        if (carrying.SelectMany(one => one.Parts).Select(part => part.Part).Distinct(StringComparer.Ordinal).Count() < 2)
        {
            return [];
        }

        return
        [
            .. kind.Features.Where(feature => feature.Type != FeatureType.Curve)
                .SelectMany(feature => EffectsOf(kind, feature.Code), (feature, rule) => Compare(facts, feature, rule, carrying))
                .OfType<FeatureDifference>(),
        ];
    }

    private static IEnumerable<Rule?> EffectsOf(Kind kind, string feature)
    {
        Rule?[] rules = [.. kind.Rules.Where(rule => rule.Feature == feature).OrderBy(rule => rule.Effect)];
        return rules.Length > 0 ? rules : [null];
    }

    private static FeatureDifference? Compare(FamilyFacts facts, Feature feature, Rule? rule, List<VariantFitted> carrying)
    {
        var values = carrying.Select(one => (one.Variant, Values: one.Parts.Select(part => ValueSelection.Of(facts.GetPart(part.Part), feature.Code)).ToList())).ToList();
        var every = carrying.SelectMany(one => one.Parts).Select(part => part.Part).Distinct(StringComparer.Ordinal)
            .Select(part => ValueSelection.Of(facts.GetPart(part), feature.Code)).ToList();
        var same = AllSame(every, rule?.Allowance ?? 0);

        // Grades: where every variant has the same set of them, none is seen to differ; which of them an engine has is not known.
        if (same == Met.No && values.Select(one => Set(one.Values)).Distinct(StringComparer.Ordinal).Count() == 1)
        {
            same = Met.NotKnown;
        }

        // Without a rule a feature is listed only where it is seen to differ; not recorded anywhere is no news.
        if (same == Met.Yes || (rule is null && same == Met.NotKnown) || every.TrueForAll(value => value is NotRecorded))
        {
            return null;
        }

        return new FeatureDifference(
            feature.Code, feature.Name, rule?.Effect, same,
            [.. values.Select(one => new VariantValue(one.Variant, Shown(one.Values)))]);
    }

    /// <summary>Every one against every other, both ways: a rule's allowance is the same in both directions, a spread need not be.</summary>
    private static Met AllSame(List<KnownValue> values, decimal allowance)
    {
        var worst = Met.Yes;
        foreach (var (index, left) in values.Index())
        {
            foreach (var right in values.Skip(index + 1))
            {
                var one = FeatureComparison.Compare(left, Relation.Same, right, allowance);
                var other = FeatureComparison.Compare(right, Relation.Same, left, allowance);
                if (one == Met.No || other == Met.No)
                {
                    return Met.No;
                }

                // Two recorded values that are written alike are the same, however wide their spread.
                var alike = left is StatedValue has && right is StatedValue its && has.Text == its.Text;
                worst = alike || (one == Met.Yes && other == Met.Yes) ? worst : Met.NotKnown;
            }
        }

        return worst;
    }

    private static string Set(List<KnownValue> values) => string.Join(" or ", values.Select(FitWording.Text).Distinct().Order(StringComparer.Ordinal));

    private static ComparedValue Shown(List<KnownValue> values)
    {
        var distinct = values.DistinctBy(FitWording.Text).ToList();
        return distinct.Count == 1 ? FitWording.Shown(distinct[0]) : new ComparedValue(string.Join(" or ", distinct.Select(FitWording.Text)));
    }
}

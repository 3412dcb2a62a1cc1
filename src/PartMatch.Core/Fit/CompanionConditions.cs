using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>What the two sides of companion rules, "when …" and "then …", say of a value and of each other.</summary>
internal static class CompanionConditions
{
    /// <summary>Does the part meet the condition?</summary>
    public static Met HoldsOf(this Condition condition, Part part) => condition.HoldsOf(ValueSelection.Of(part, condition.At.Feature));

    /// <summary>Does the value meet it? "Same" for a quantity: the recorded band contains the value asked for.</summary>
    public static Met HoldsOf(this Condition condition, KnownValue value) => (value, condition.Value, condition.Relation) switch
    {
        (StatedQuantity has, QuantityReading asked, Relation.Same) => FeatureComparison.AsMet(new Interval(asked.Value, asked.Value).LiesIn(has.Possible)),
        _ => Compare(value, condition.Relation, condition),
    };

    /// <summary>Does a part that meets the first condition surely meet the second? Only asked of one feature of one position.</summary>
    public static bool Implies(this Condition demand, Condition when) => (demand.Relation, when.Relation) switch
    {
        (Relation.Same or Relation.OneOf, _) => Values(demand).All(value => Compare(value, when.Relation, when) == Met.Yes),
        (Relation.AtLeast, Relation.AtLeast) or (Relation.AtMost, Relation.AtMost) or (Relation.Covers, Relation.Covers) =>
            Compare(ValueOf(demand), demand.Relation, when) == Met.Yes,
        _ => false,
    };

    /// <summary>Is it certain that no part can meet both? Only asked of one position.</summary>
    public static bool Excludes(this Condition left, Condition right) => left.At.Feature == right.At.Feature && (left.Relation, right.Relation) switch
    {
        (Relation.Same or Relation.OneOf, Relation.Covers) => false,
        (Relation.Same or Relation.OneOf, _) => Values(left).All(value => Compare(value, right.Relation, right) == Met.No),
        (_, Relation.Same or Relation.OneOf) => right.Excludes(left),
        (Relation.AtLeast, Relation.AtMost) => Compare(ValueOf(left), Relation.AtMost, right) == Met.No,
        (Relation.AtMost, Relation.AtLeast) => right.Excludes(left),
        _ => false,
    };

    public static bool IsSameAs(this Condition left, Condition right) =>
        left.At == right.At && left.Relation == right.Relation && left.Value.Text == right.Value.Text;

    /// <summary>Does it ask that nothing is fitted there?</summary>
    public static bool IsLeaveOff(this Condition condition) => condition.At.Feature == Feature.Present.Code && condition.Value.Text == "no";

    /// <summary>"lift at least 9.0 mm", "nothing fitted".</summary>
    public static string InWords(this Condition condition, FamilyFacts facts)
    {
        if (condition.At.Feature == Feature.Present.Code)
        {
            return condition.IsLeaveOff() ? "nothing fitted" : "a part fitted";
        }

        var kind = facts.FindPosition(condition.At.Position) is { } position ? facts.FindKind(position.Kind) : null;
        var name = kind?.FindFeature(condition.At.Feature)?.Name ?? condition.At.Feature;
        var value = FitWording.InWords(condition.Value.Text.Replace("|", " or ", StringComparison.Ordinal));
        return condition.Relation is Relation.Same or Relation.OneOf ? $"{name} {value}" : $"{name} {FitWording.Of(condition.Relation)} {value}";
    }

    /// <summary>The value it asks for, which no source has to vouch for.</summary>
    public static KnownValue ValueOf(Condition condition) => ValueSelection.Of(condition.Value, null);

    private static Met Compare(KnownValue value, Relation relation, Condition against) =>
        FeatureComparison.Compare(value, relation, ValueOf(against), allowance: 0);

    /// <summary>Each single value a "same" or "one of" condition accepts.</summary>
    private static IEnumerable<KnownValue> Values(Condition condition) => condition.Value is ChoicesReading several && condition.Relation == Relation.OneOf
        ? several.Choices.Select(choice => ValueSelection.Of(new ChoiceReading(choice), null))
        : [ValueOf(condition)];
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>Compares one value with one demand in strong three-valued logic.</summary>
/// <remarks>
/// Wholly inside what is surely accepted: yes; no point in common with what is possibly accepted: no; else not known.
/// Source: the decision rule of ISO 14253-1; three-valued logic: Kleene, Introduction to Metamathematics, 1952, section 64.
/// </remarks>
public static class FeatureComparison
{
    /// <summary>Is the part's value accepted by the demand?</summary>
    /// <param name="allowance">The rule's allowance in base units; quantities only.</param>
    public static Met Compare(KnownValue part, Relation relation, KnownValue demand, decimal allowance) => (part, demand) switch
    {
        (StatedQuantity has, StatedQuantity wants) =>
            Within(has.Possible, SurelyAccepted(relation, wants, allowance), PossiblyAccepted(relation, wants, allowance)),
        (StatedCount has, StatedCount wants) => relation switch
        {
            Relation.AtLeast => AsMet(has.Value >= wants.Value),
            Relation.AtMost => AsMet(has.Value <= wants.Value),
            _ => AsMet(has.Value == wants.Value),
        },
        (StatedChoices has, StatedChoices wants) => relation switch
        {
            Relation.OneOf => AsMet(has.Choices.All(choice => wants.Choices.Contains(choice, StringComparer.Ordinal))),
            Relation.Covers => AsMet(wants.Choices.All(choice => has.Choices.Contains(choice, StringComparer.Ordinal))),
            _ => AsMet(has.Choices.Order(StringComparer.Ordinal).SequenceEqual(wants.Choices.Order(StringComparer.Ordinal))),
        },
        (StatedCount has, StatedChoices wants) when relation == Relation.OneOf => AsMet(wants.Choices.Contains(has.Text, StringComparer.Ordinal)),
        _ => Met.NotKnown,
    };

    /// <summary>Does an interval lie in a band?</summary>
    public static Met InBand(Interval value, Interval band) => Within(value, band, band);

    public static Interval SurelyAccepted(Relation relation, StatedQuantity wants, decimal allowance) =>
        Accepted(relation, wants.Stated, allowance - wants.Uncertainty);

    public static Interval PossiblyAccepted(Relation relation, StatedQuantity wants, decimal allowance) =>
        Accepted(relation, wants.Stated, allowance + wants.Uncertainty);

    public static Met AsMet(bool met) => met ? Met.Yes : Met.No;

    private static Interval Accepted(Relation relation, Interval stated, decimal beyond) => relation switch
    {
        Relation.AtLeast => new Interval(stated.Low - beyond, null),
        Relation.AtMost => new Interval(null, stated.High + beyond),
        _ => stated.Widened(beyond),
    };

    private static Met Within(Interval value, Interval inner, Interval outer) =>
        value.LiesIn(inner) ? Met.Yes : value.Meets(outer) ? Met.NotKnown : Met.No;
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Builds;

/// <summary>
/// A goal as what it asks of the engine: the boost of the goal stands in the place of the service that names one, so that the rules of boost speak.
/// </summary>
internal static class GoalService
{
    private const string Boost = "boost";

    /// <summary>What the goal puts at the position; null where it says nothing of it.</summary>
    public static Candidate? Of(BuildTerms terms, Position position)
    {
        var family = terms.Facts.Family;
        if (terms.Build.Goal?.Boost is not { } typed || family.FindKind(position.Kind)?.FindFeature(Boost) is not { } feature
            || QuantityRangeParser.Parse(typed, Dimension.Pressure) is not RangeRead { Quantity: var boost })
        {
            return null;
        }

        var model = family.FitmentsAt(terms.Target, position.Code).Select(fitment => fitment.Part).OfType<string>().Select(family.FindPart).FirstOrDefault();
        var unit = feature.Unit ?? UnitTable.BaseOf(Dimension.Pressure);

        // It keeps the id of the service, so that what was found under boost is counted: what broke at less breaks at more.
        var part = (model ?? Part.Nothing(position.Kind) with { Id = $"goal:boost-{typed.Replace(' ', '-')}" }) with
        {
            Number = typed,
            Name = $"Goal: {typed} boost",
            Values =
            [
                .. (model?.Values ?? []).Where(value => value.Feature != Boost),
                new RecordedValue(Boost, new QuantityReading(boost.Value, 0, 0, 0, unit, typed), null),
            ],
        };
        return new Candidate(position.Code, CandidateFrom.Declared, [part], IsGraded: false, Pieces: 1, terms.Target, IsUsersChoice: true)
        {
            Goal = typed,
        };
    }
}

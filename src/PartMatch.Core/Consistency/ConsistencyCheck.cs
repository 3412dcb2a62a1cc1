using System.Runtime.CompilerServices;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Consistency;

/// <summary>What can the base find wrong or missing by itself, and which measurement would settle most?</summary>
public static class ConsistencyCheck
{
    /// <summary>How many measurements are proposed.</summary>
    private const int MostMeasurements = 10;

    // Facts are immutable, and what hangs on a missing value takes hundreds of fit questions.
    private static readonly ConditionalWeakTable<FamilyFacts, Lazy<IReadOnlyList<Fault>>> _found = [];

    /// <summary>Decides one question.</summary>
    /// <param name="lookAlikes">What near numbers are ranked from; null where they are not to be looked for.</param>
    /// <exception cref="ArgumentException">The variant is not of this family.</exception>
    public static ConsistencyAnswer Decide(FamilyFacts facts, ConsistencyQuestion question, LookAlikeFacts? lookAlikes = null)
    {
        if (question.Variant is { } variant && facts.FindVariant(variant) is null)
        {
            throw new ArgumentException($"{variant} is not a variant of {facts.Family.Code}.", nameof(question));
        }

        var found = _found.GetValue(facts, of => new Lazy<IReadOnlyList<Fault>>(() => Look(of))).Value;
        Fault[] concerned =
        [
            .. found.Concat(lookAlikes is null ? [] : NearUnjudged.Find(facts, lookAlikes))
                .Where(fault => question.Variant is null || fault.Variants.Contains(question.Variant, StringComparer.Ordinal))
                .OrderBy(fault => fault.Sort),
        ];
        Fault[] wanted = [.. concerned.Where(fault => question.Sort is null || fault.Sort == question.Sort)];
        return new ConsistencyAnswer(
            new ConsistencyAsked(facts.Family.Code, question.Variant, question.Sort, question.Limit),
            Enum.GetValues<FaultSort>().Where(sort => sort != FaultSort.NearUnjudged || lookAlikes is not null)
                .ToDictionary(Codes.Of, sort => concerned.Count(fault => fault.Sort == sort), StringComparer.Ordinal),
            [.. concerned.Where(fault => fault.Sort == FaultSort.MissingValue && fault.Unlocks != Unlocks.None).Take(MostMeasurements)],
            [.. wanted.Take(question.Limit)],
            wanted.Length);
    }

    /// <summary>Every fault but near numbers, worst first.</summary>
    private static IReadOnlyList<Fault> Look(FamilyFacts facts)
    {
        var (places, open) = (new FittedPlaces(facts), new OpenQuestions(facts));
        Fault[] all =
        [
            .. SupersessionLoops.Find(facts), .. JointFaults.Find(facts), .. StackFaults.Find(facts), .. CompanionFaults.Find(facts),
            .. FittedPartFaults.Find(facts), .. DisputedValues.Find(facts, places, open), .. ContradictedValues.Find(facts, places),
            .. FarOffValues.Find(facts, places), .. FindingFaults.Find(facts), .. TorqueFaults.Find(facts), .. SpanFaults.Find(facts), .. MissingValues.Find(facts, places, open),
            .. NotRecordedPositions.Find(facts, open), .. EvidenceFaults.Find(facts, places), .. KindFaults.Find(facts),
        ];
        return
        [
            .. all.OrderBy(fault => fault.Sort).ThenByDescending(fault => fault.Consequence)
                .ThenByDescending(fault => fault.Unlocks?.Alone).ThenByDescending(fault => fault.Unlocks?.Together)
                .ThenBy(fault => fault.Measure?.Minutes ?? decimal.MaxValue)
                .ThenBy(fault => fault.Position, StringComparer.Ordinal).ThenBy(fault => fault.Title, StringComparer.Ordinal),
        ];
    }
}

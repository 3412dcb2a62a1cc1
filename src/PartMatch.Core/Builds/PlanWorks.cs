using System.Runtime.CompilerServices;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Builds;

/// <summary>Works that a joint, a stack, a rule of a kind or a wish of the build can ask for.</summary>
internal static class PlanWorks
{
    private static readonly ConditionalWeakTable<FamilyFacts, IReadOnlyList<Work>> _known = [];

    /// <summary>Every work the family's relations name, ordered by code.</summary>
    public static IReadOnlyList<Work> Known(FamilyFacts facts) => _known.GetValue(facts, Read);

    /// <summary>Those, and what the build asks for besides.</summary>
    public static IReadOnlyList<Work> Of(BuildTerms terms) =>
    [
        .. Known(terms.Facts.Family).Concat(terms.Build.Works.Select(asked => terms.Facts.Family.FindWork(asked.Work)).OfType<Work>())
            .DistinctBy(work => work.Code).OrderBy(work => work.Code, StringComparer.Ordinal),
    ];

    /// <summary>Positions at which it changes something.</summary>
    public static IEnumerable<string> PositionsOf(Work work) => work.Changes.Select(change => change.Split('.', 2)[0]);

    private static IReadOnlyList<Work> Read(FamilyFacts facts) =>
    [
        .. facts.Joints.Select(joint => joint.Work).Concat(facts.Stacks.Select(stack => stack.Work))
            .Concat(facts.Positions.SelectMany(position => facts.GetKind(position.Kind).Rules).Select(rule => rule.Work))
            .OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(facts.FindWork).OfType<Work>(),
    ];
}

using System.Runtime.CompilerServices;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Builds;

/// <summary>Works that a joint, a stack, a rule of a kind or a wish of the build can ask for.</summary>
internal static class PlanWorks
{
    private static readonly ConditionalWeakTable<FamilyFacts, IReadOnlyList<Work>> _known = [];

    /// <summary>Every work the family's relations name, ordered by code.</summary>
    public static IReadOnlyList<Work> Known(FamilyFacts facts) => _known.GetValue(facts, Read);

    private static IReadOnlyList<Work> Read(FamilyFacts facts) =>
    [
        .. facts.Joints.Select(joint => joint.Work).Concat(facts.Stacks.Select(stack => stack.Work))
            .Concat(facts.Positions.SelectMany(position => facts.GetKind(position.Kind).Rules).Select(rule => rule.Work))
            .OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(facts.FindWork).OfType<Work>(),
    ];
}

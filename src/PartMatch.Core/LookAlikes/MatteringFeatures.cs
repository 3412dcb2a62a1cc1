using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>Which features matter: those that a rule of the kind, a need, a joint, a stack, a companion rule or one of the sums reads.</summary>
/// <remarks>A flywheel bolt has no rule for its length, and yet one that is 6 mm too long bottoms in its hole: the stack of the joint reads it.</remarks>
internal sealed class MatteringFeatures
{
    // What the injector sums read of an injector.
    private static readonly string[] _ofInjectors = ["rated-flow", "rated-fluid", "rated-pressure"];

    private readonly HashSet<(string Kind, string Feature)> _read = [];

    public MatteringFeatures(IEnumerable<FamilyFacts> families)
    {
        foreach (var family in families)
        {
            _read.UnionWith(ReadBy(family).Select(at => (family.FindPosition(at.Position)?.Kind ?? "", at.Feature)));
            _read.UnionWith(family.Positions.Where(position => position.Role == Roles.Injector).SelectMany(_ => _ofInjectors, (position, feature) => (position.Kind, feature)));
        }
    }

    public bool Contains(Kind kind, string feature) => kind.Rules.Any(rule => rule.Feature == feature) || _read.Contains((kind.Code, feature));

    private static IEnumerable<FeatureAt> ReadBy(FamilyFacts family) =>
    [
        .. family.Needs.Select(need => new FeatureAt(need.Position, need.Feature)),
        .. family.Joints.SelectMany(joint => new[] { joint.Left, joint.Right }),
        .. family.Stacks.SelectMany(stack => stack.Terms.OfType<FeatureTerm>()).Select(term => term.At),
        .. family.Companions.SelectMany(rule => new[] { rule.When.At, rule.Then.At }),
    ];
}

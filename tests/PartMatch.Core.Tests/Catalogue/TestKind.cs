using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Tests.Catalogue;

/// <summary>One invented kind of part, told feature by feature. It can alter running and its list is reviewed unless the test says otherwise.</summary>
internal sealed class TestKind(string code)
{
    private readonly List<Feature> _features = [];
    private readonly List<Rule> _rules = [];
    private readonly List<Check> _checks = [];
    private readonly List<Shot> _shots = [];
    private readonly List<string> _cautions = [];
    private bool _canAlter = true;
    private bool _reviewed = true;

    public TestKind CannotAlterRunning()
    {
        _canAlter = false;
        return this;
    }

    public TestKind NotReviewed()
    {
        _reviewed = false;
        return this;
    }

    public TestKind Caution(string caution)
    {
        _cautions.Add(caution);
        return this;
    }

    public TestKind Length(string feature) => Add(new Feature(feature, Named(feature), FeatureType.Quantity, TestFamily.Millimetre, []));

    public TestKind Counted(string feature) => Add(new Feature(feature, Named(feature), FeatureType.Count, null, []));

    public TestKind Choice(string feature, params string[] choices) => Add(new Feature(feature, Named(feature), FeatureType.Choice, null, choices));

    public TestKind Choices(string feature) => Add(new Feature(feature, Named(feature), FeatureType.Choices, null, []));

    /// <param name="allowance">In mm.</param>
    public TestKind Rule(
        string feature, Effect effect, Relation relation = Relation.Same, decimal allowance = 0, string? work = null, Consequence consequence = Consequence.Loss)
    {
        _rules.Add(new Rule(feature, effect, relation, TestFamily.Metres(allowance), work, consequence, null));
        return this;
    }

    /// <param name="uncertainty">In mm; null when not recorded.</param>
    public TestKind Check(string feature, Method method, decimal minutes, decimal? uncertainty = null, string? how = null)
    {
        _checks.Add(new Check(feature, method, minutes, uncertainty is { } mm ? TestFamily.Metres(mm) : null, how));
        return this;
    }

    /// <summary>A standard photograph that shows these features.</summary>
    public TestKind Shot(string shot, string name, string? how, params string[] shows)
    {
        _shots.Add(new Shot(shot, name, shows, how));
        return this;
    }

    public Kind Build() => new(code, TestFamily.Title(code), _canAlter, _reviewed, _cautions, _features, _rules, _checks) { Shots = _shots };

    private static string Named(string feature) => feature.Replace('-', ' ');

    private TestKind Add(Feature feature)
    {
        _features.Add(feature);
        return this;
    }
}

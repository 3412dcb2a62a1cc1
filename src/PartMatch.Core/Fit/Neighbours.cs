using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>What sits at another position while the part is judged: a closed set of outcomes.</summary>
internal abstract record Neighbour;

/// <summary>Nobody recorded what sits there.</summary>
internal sealed record NeighbourNotRecorded : Neighbour;

/// <summary>Known to carry nothing.</summary>
internal sealed record NothingThere : Neighbour;

/// <summary>One of these parts sits there.</summary>
/// <param name="Parts">Ordered; more than one where several are valid together.</param>
/// <param name="By">Who put it there.</param>
/// <param name="IsChosen">One of them is chosen by measurement when the engine is built, so that one that suits is enough.</param>
internal sealed record PartThere(IReadOnlyList<Part> Parts, PutThereBy By, bool IsChosen = false) : Neighbour;

internal enum PutThereBy
{
    Maker,

    /// <summary>The question names it instead of what the maker fitted.</summary>
    Question,

    /// <summary>A companion rule asks for it: the answer holds once that change is made.</summary>
    Change,
}

/// <summary>Who sits next to the part: what the question says, else what the maker fitted on that stretch of engines.</summary>
internal sealed class Neighbours(FamilyFacts facts, FitQuestion question, EngineSpan span)
{
    private readonly Dictionary<string, Neighbour> _changed = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Neighbour> _standing = new(StringComparer.Ordinal);

    /// <summary>From here on the position holds what a companion rule asks for; null leaves it open which part that will be.</summary>
    public void Change(string position, Part? part) =>
        _changed[position] = part is null ? new NeighbourNotRecorded() : new PartThere([part], PutThereBy.Change);

    /// <summary>From here on the position is left empty because a companion rule asks for it.</summary>
    public void LeaveOff(string position) => _changed[position] = new NothingThere();

    /// <summary>Once the changes are made.</summary>
    public Neighbour At(string position) => _changed.GetValueOrDefault(position) ?? AsItStands(position);

    /// <summary>Will this part, or for null nothing, surely be there? Of parts chosen by measurement any is.</summary>
    public bool Holds(string position, string? part) => At(position) switch
    {
        NothingThere => part is null,
        PartThere { IsChosen: true } there => there.Parts.Any(one => one.Id == part),
        PartThere there => there.Parts.All(one => one.Id == part),
        _ => false,
    };

    /// <summary>Before any change.</summary>
    public Neighbour AsItStands(string position)
    {
        if (!_standing.TryGetValue(position, out var neighbour))
        {
            _standing[position] = neighbour = LookUp(position);
        }

        return neighbour;
    }

    private Neighbour LookUp(string position)
    {
        if (question.With is not null && question.With.TryGetValue(position, out var given))
        {
            return given is null ? new NothingThere() : new PartThere([given], IsOther(position, given) ? PutThereBy.Question : PutThereBy.Maker);
        }

        if (question.Beside is not null && question.Beside.TryGetValue(position, out var several))
        {
            return new PartThere(several.Parts, IsAnother(position) ? PutThereBy.Question : PutThereBy.Maker, several.IsChosen);
        }

        var fitted = FittedAt(position);
        Part[] parts = [.. fitted.Select(fitment => fitment.Part).OfType<string>().Distinct().Select(facts.FindPart).OfType<Part>()];
        return (fitted.Count, parts.Length) switch
        {
            (0, _) => new NeighbourNotRecorded(),
            (_, 0) => new NothingThere(),
            _ => new PartThere(parts, PutThereBy.Maker, facts.Selects.Any(row => row.Position == position)),
        };
    }

    /// <summary>Did the question put something else there than the maker did?</summary>
    public bool IsAnother(string position) =>
        (question.With is not null && question.With.TryGetValue(position, out var given) && IsOther(position, given))
        || (question.Beside is not null && question.Beside.TryGetValue(position, out var several) && several.Parts.Any(part => IsOther(position, part)));

    /// <summary>Does everything stand there that the maker put there, wherever the answer can look?</summary>
    public bool AreTheMakers
    {
        get
        {
            var others = (question.With?.Keys ?? []).Concat(question.Beside?.Keys ?? []).Where(IsAnother).ToList();
            return others.Count == 0 || !Reach(facts, question.Variant, question.Position).Overlaps(others);
        }
    }

    /// <summary>Every position that an answer here can look at, this one included: by joints, sums, companion rules and what was found with neighbours.</summary>
    public static IReadOnlySet<string> Reach(FamilyFacts facts, string variant, string position)
    {
        var reach = CompanionClosure.Reach(facts, new FitQuestion(variant, position, null));
        reach.UnionWith(facts.JointsAt(position).SelectMany(joint => new[] { joint.Left.Position, joint.Right.Position }));
        reach.UnionWith(facts.StacksAt(position).SelectMany(stack => stack.Terms).OfType<FeatureTerm>().Select(term => term.At.Position));
        reach.UnionWith(facts.FindingsAt(position).SelectMany(finding => finding.With.Keys));
        return reach;
    }

    private IReadOnlyList<Fitment> FittedAt(string position) =>
        [.. facts.FitmentsAt(question.Variant, position).Where(fitment => span.IsIn(fitment.Span))];

    private bool IsOther(string position, Part? given) =>
        FittedAt(position).All(fitment => fitment.Part != given?.Id);
}

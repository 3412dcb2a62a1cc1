using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>What sits at another position while the part is judged: a closed set of outcomes.</summary>
internal abstract record Neighbour;

/// <summary>Nobody recorded what sits there.</summary>
internal sealed record NeighbourNotRecorded : Neighbour;

/// <summary>Known to carry nothing.</summary>
internal sealed record NothingThere : Neighbour;

/// <summary>One of these parts sits there.</summary>
/// <param name="Parts">Alternatives, ordered; more than one where several are valid together, or where a change is still to be chosen.</param>
/// <param name="Given">The question itself put it there instead of what the maker fitted.</param>
/// <param name="Changed">A companion rule asks for it: the answer holds once that change is done.</param>
internal sealed record PartThere(IReadOnlyList<Part> Parts, bool Given, bool Changed) : Neighbour;

/// <summary>Who sits next to the part: what the question says, else what the maker fitted on that stretch of engines.</summary>
internal sealed class Neighbours(FamilyFacts facts, FitQuestion question, EngineSpan span)
{
    private readonly Dictionary<string, Neighbour> _changed = new(StringComparer.Ordinal);

    public EngineSpan Span => span;

    public IReadOnlyList<Fitment> FittedAt(string position) =>
        [.. facts.FitmentsAt(question.Variant, position).Where(fitment => fitment.Evidence?.IsRetracted != true && span.IsIn(fitment.Span))];

    /// <summary>From here on the position holds what a companion rule asks for.</summary>
    public void Change(string position, IReadOnlyList<Part> candidates, bool leftOff) =>
        _changed[position] = leftOff ? new NothingThere() : candidates.Count == 0 ? new NeighbourNotRecorded() : new PartThere(candidates, Given: false, Changed: true);

    public Neighbour At(string position)
    {
        if (_changed.TryGetValue(position, out var changed))
        {
            return changed;
        }

        if (question.With is not null && question.With.TryGetValue(position, out var given))
        {
            return given is null ? new NothingThere() : new PartThere([given], IsOther(position, given), Changed: false);
        }

        var fitted = FittedAt(position);
        Part[] parts = [.. fitted.Select(fitment => fitment.Part).OfType<string>().Distinct().Select(facts.FindPart).OfType<Part>()];
        return (fitted.Count, parts.Length) switch
        {
            (0, _) => new NeighbourNotRecorded(),
            (_, 0) => new NothingThere(),
            _ => new PartThere(parts, Given: false, Changed: false),
        };
    }

    /// <summary>Did the question put something else there than the maker did?</summary>
    public bool IsAnother(string position) =>
        question.With is not null && question.With.TryGetValue(position, out var given) && IsOther(position, given);

    private bool IsOther(string position, Part? given) =>
        FittedAt(position).All(fitment => fitment.Part != given?.Id);
}

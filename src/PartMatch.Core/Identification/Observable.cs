using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Identification;

/// <summary>One check of one feature, made on the thing to be identified.</summary>
/// <param name="Position">Where on an engine; null where a part in hand or in a photo is looked at.</param>
/// <param name="Kind">The kind whose check it is; null for what the eye sees of any part.</param>
/// <param name="Values">For each candidate every value that it can have; empty where that is not recorded.</param>
internal sealed record Observable(Position? Position, Kind? Kind, Feature Feature, Check Check, IReadOnlyList<IReadOnlyList<StatedValue>> Values)
{
    /// <summary>What is seen of any feature where the position carries nothing.</summary>
    public static StatedChoices NothingThere { get; } = new(["nothing-there"], "nothing there", EvidenceGrade.MakersDocument, []);

    private IReadOnlyList<ObservableAnswer>? _answers;

    /// <summary>Minutes of the check, the way to it included.</summary>
    public decimal Minutes => Check.Minutes + (Position?.AccessMinutes ?? 0);

    public bool WorksBeforePaying => Check.Method is Method.Photo or Method.Label;

    /// <summary>Every answer that the check can give, in the order of the values.</summary>
    public IReadOnlyList<ObservableAnswer> Answers => _answers ??= AnswerSets.Of(this);

    public KeyTest AsTest() => new((double)Minutes, [.. Answers.Select(answer => answer.Candidates)]);

    /// <summary>Where and what: <c>intake-camshaft.nose</c>, or <c>nose</c> of a part by itself.</summary>
    public string Address => Position is null ? Feature.Code : $"{Position.Code}.{Feature.Code}";

    /// <summary>The feature in words, with its position where it has one.</summary>
    public string Name => Position is null ? Feature.Name : $"{Position.Name}: {Feature.Name}";

    public ObservedCheck Shown() => new(
        Position?.Code, Kind?.Code, Feature.Code, Name, Check.Method, Check.Minutes, Position?.AccessMinutes, Position?.Access, WorksBeforePaying, Check.How);

    /// <summary>Does the check measure, so that its reading has an uncertainty?</summary>
    public decimal? UncertaintyOf(StatedValue value) => value switch
    {
        StatedQuantity when Check.Method == Method.Label => 0, // a label is read, not measured
        StatedQuantity => Check.Uncertainty,
        StatedCount => Check.Uncertainty ?? 0,
        _ => 0,
    };

    /// <summary>Where a reading can lie when this is the value; null where the check's uncertainty is not recorded, or the value is a choice.</summary>
    /// <remarks>The reading may be off by the uncertainty, and it is compared with another candidate's reading, which may be as well: twice in all.</remarks>
    public Interval? ReadingOf(StatedValue value) => (value, UncertaintyOf(value)) switch
    {
        (StatedQuantity quantity, { } uncertainty) => quantity.Possible.Widened(uncertainty),
        (StatedCount count, { } uncertainty) => new Interval(count.Value, count.Value).Widened(uncertainty),
        _ => null,
    };
}

/// <summary>One answer of a check.</summary>
/// <param name="Candidates">Those that it does not rule out, bit i for candidate i.</param>
/// <param name="Text">What is seen or read.</param>
/// <param name="Seen">The same as an observation that a question can carry.</param>
internal sealed record ObservableAnswer(ulong Candidates, string Text, string Seen);

using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>How the other part stands to the one asked about.</summary>
public enum PartRelation
{
    /// <summary>One part, or two numbers that stand in for each other, or found to be one part.</summary>
    SamePart,

    /// <summary>The other replaces the one asked about.</summary>
    NewerNumber,

    /// <summary>The one asked about replaces the other.</summary>
    OlderNumber,

    /// <summary>Somebody found that the mix-up does harm.</summary>
    Trap,

    /// <summary>Somebody found that it does none.</summary>
    Harmless,

    NotJudged,
}

/// <summary>Which parts have been judged beside others.</summary>
/// <param name="IsNamed">Does any supersession or judgement name it? Of a large list hardly any is.</param>
/// <param name="AreJudged">Asked of two that are named, from several workers at once.</param>
internal sealed record JudgedParts(Func<string, bool> IsNamed, Func<string, string, bool> AreJudged);

/// <summary>How two parts stand to each other by supersession, else by what somebody found of the pair.</summary>
internal static class PartRelations
{
    /// <summary>The relation, and the supersessions it rests on, with their limits, or else what is noted of the pair, in words; null where there is neither.</summary>
    /// <param name="supersessions">Every one that is not retracted, wherever it holds.</param>
    public static (PartRelation Relation, string? Text) Between(Supersession[] supersessions, IReadOnlyList<JudgedPair> pairs, string asked, string other)
    {
        if (asked == other)
        {
            return (PartRelation.SamePart, "Another number of the same part.");
        }

        var newer = IdentityCheck.PermittedChain(supersessions, asked, other);
        var older = IdentityCheck.PermittedChain(supersessions, other, asked);
        return (newer, older) switch
        {
            ({ } chain, not null) when chain.All(link => link.Way == SupersessionWay.Both) => (PartRelation.SamePart, InWords(supersessions, chain)),
            ({ } chain, null) => (PartRelation.NewerNumber, InWords(supersessions, chain)),
            (null, { } chain) => (PartRelation.OlderNumber, InWords(supersessions, chain)),
            _ => Judged(pairs, asked, other), // no link, or one-way links in a loop, which say nothing
        };
    }

    /// <summary>Which two parts a supersession links or somebody has judged: not <see cref="PartRelation.NotJudged"/>.</summary>
    public static JudgedParts JudgedIn(LookAlikeFacts facts)
    {
        var named = facts.Supersessions.SelectMany(link => (string[])[link.OldPart, link.NewPart])
            .Concat(facts.Pairs.SelectMany(pair => (string[])[pair.PartA, pair.PartB])).ToHashSet(StringComparer.Ordinal);
        return new JudgedParts(named.Contains, (one, other) => Between(facts.Supersessions, facts.Pairs, one, other).Relation != PartRelation.NotJudged);
    }

    // Books that judge a pair differently: the judgement that makes a buyer most careful counts, with what is noted beside it.
    private static (PartRelation Relation, string? Text) Judged(IReadOnlyList<JudgedPair> pairs, string asked, string other)
    {
        var judged = pairs.Where(pair => (pair.PartA == asked && pair.PartB == other) || (pair.PartA == other && pair.PartB == asked))
            .Where(pair => pair.Evidence?.IsRetracted != true)
            .ToLookup(pair => pair.Judgement);
        return new[] { PairJudgement.Trap, PairJudgement.Harmless, PairJudgement.SamePart }
            .Where(judged.Contains)
            .Select(judgement => (RelationOf(judgement), judged[judgement].Select(pair => pair.Note).FirstOrDefault(note => note is not null)))
            .FirstOrDefault((PartRelation.NotJudged, null));
    }

    private static PartRelation RelationOf(PairJudgement judgement) => judgement switch
    {
        PairJudgement.SamePart => PartRelation.SamePart,
        PairJudgement.Trap => PartRelation.Trap,
        PairJudgement.Harmless => PartRelation.Harmless,
        _ => throw new ArgumentOutOfRangeException(nameof(judgement), judgement, null),
    };

    private static string InWords(Supersession[] supersessions, IReadOnlyList<ChainLink> chain) =>
        string.Join(' ', chain.Select(link => $"{link.Text}{Limits(supersessions, link)}."));

    private static string Limits(Supersession[] supersessions, ChainLink link)
    {
        var row = supersessions.First(row => (row.OldPart == link.From && row.NewPart == link.To) || (row.OldPart == link.To && row.NewPart == link.From));
        var span = row.Span;
        string[] limits =
        [
            .. row.Variants.Count > 0 ? [$"on {string.Join(", ", row.Variants)}"] : Array.Empty<string>(),
            .. Bounds("built", span.BuiltFrom?.Text, span.BuiltTo?.Text),
            .. Bounds("serial", Number(span.SerialFrom), Number(span.SerialTo)),
        ];
        return limits.Length == 0 ? "" : $"; only {string.Join(", ", limits)}";
    }

    private static IEnumerable<string> Bounds(string what, string? from, string? to) => (from, to) switch
    {
        (null, null) => [],
        ({ } low, null) => [$"{what} from {low}"],
        (null, { } high) => [$"{what} to {high}"],
        ({ } low, { } high) => [$"{what} {low} to {high}"],
    };

    private static string? Number(long? serial) => serial?.ToString(CultureInfo.InvariantCulture);
}

using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>How the other part stands to the one asked about.</summary>
public enum PartRelation
{
    /// <summary>One part, or two numbers that stand in for each other.</summary>
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

/// <summary>What somebody found of two parts that can be taken for one another; the order of the two does not count.</summary>
/// <param name="IsTrap">A trap, as against harmless.</param>
public sealed record JudgedPair(string PartA, string PartB, bool IsTrap, Evidence? Evidence, string? Note);

/// <summary>How two parts stand to each other by supersession, else by what somebody found of the pair.</summary>
internal static class PartRelations
{
    /// <summary>The relation, and the supersessions it rests on, with their limits, in words; null where it rests on none.</summary>
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

    private static (PartRelation Relation, string? Text) Judged(IReadOnlyList<JudgedPair> pairs, string asked, string other)
    {
        var judged = pairs.Where(pair => (pair.PartA == asked && pair.PartB == other) || (pair.PartA == other && pair.PartB == asked))
            .Where(pair => pair.Evidence?.IsRetracted != true).ToList();
        return judged.Count == 0
            ? (PartRelation.NotJudged, null)
            : (judged.Exists(pair => pair.IsTrap) ? PartRelation.Trap : PartRelation.Harmless, judged.Select(pair => pair.Note).FirstOrDefault(note => note is not null));
    }

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

using System.Collections.Frozen;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Buying;

/// <summary>What is the number that a seller writes?</summary>
/// <param name="Part">The one part that it names; null for any other verdict than <see cref="SoldVerdict.KnownPart"/> and <see cref="SoldVerdict.KnownElsewhere"/>.</param>
/// <param name="Candidates">Parts that it can mean where it names several or only narrows.</param>
/// <param name="Nearest">Of a number in no book: the nearest known ones, likeliest first, at most three.</param>
/// <param name="Dangers">Parts that it can be taken for with medium or high danger, the most dangerous first, at most two.</param>
public sealed record SoldNumber(
    SoldVerdict Verdict, string? Part, IReadOnlyList<string> Candidates, IReadOnlyList<NearestNumber> Nearest, IReadOnlyList<LookAlikeWarning> Dangers, string Text)
{
    /// <summary>The part that the offer is recorded with; null where it is recorded by its number alone.</summary>
    public string? Recorded => Verdict == SoldVerdict.KnownPart ? Part : null;
}

/// <summary>What the number of an offer turned out to be, with no place to hold it against: the words are those of listings where they mean the same.</summary>
public enum SoldVerdict
{
    /// <summary>It names one part that the book may speak of.</summary>
    KnownPart,

    /// <summary>It names one part, but of a book that this one does not use: the offer is recorded by its number.</summary>
    KnownElsewhere,

    /// <summary>It stands on several parts, or only as a casting mark: the offer is recorded by its number.</summary>
    NarrowsOnly,

    /// <summary>In no book, but it reads like a known number once 0 and O, 1 and I and the like count as one.</summary>
    LookAlikeCharacters,

    /// <summary>In no book.</summary>
    Unknown,
}

/// <summary>The numbers of the base, ready to be asked for those of a price list.</summary>
public sealed class SoldNumbers
{
    private const int MostNearest = 3;
    private const int MostDangers = 2;

    private readonly LookAlikeFacts _facts;
    private readonly IReadOnlySet<string> _scope;
    private readonly FrozenDictionary<string, PartNumber[]> _byKey;

    // A list names the same part in many rows, and weighing its look-alikes is dear.
    private readonly Dictionary<string, IReadOnlyList<LookAlikeWarning>> _dangers = new(StringComparer.Ordinal);

    /// <param name="facts">With every number of the base.</param>
    /// <param name="scope">Ids of the parts that the book may refer to.</param>
    public SoldNumbers(LookAlikeFacts facts, IReadOnlySet<string> scope) =>
        (_facts, _scope, _byKey) = (facts, scope, facts.Numbers.All.GroupBy(number => number.Key).ToFrozenDictionary(group => group.Key,
            group => group.ToArray(), StringComparer.Ordinal));

    public bool IsKnown(string written) => _byKey.ContainsKey(NumberKey.Of(written));

    public SoldNumber Judge(string written)
    {
        var key = NumberKey.Of(written);
        if (_byKey.GetValueOrDefault(key) is { } numbers)
        {
            return Known(numbers);
        }

        // Numbers alone do not tell which of two parts with one number is meant, so each number is named once.
        var near = _facts.Numbers.Find(key).DistinctBy(one => one.Number.Key).ToList();
        NearestNumber[] nearest = [.. near.Take(MostNearest).Select(one => new NearestNumber(one.Number.Written, one.Number.Part, one.Edits))];
        return near.Find(one => one.FoldedEdits == 0) is { } twin
            ? LookAlike(twin, nearest)
            : new SoldNumber(SoldVerdict.Unknown, null, [], nearest, [], nearest is [] ? "in no book, and no known number is near it"
                : $"in no book; the nearest is {Say(near[0].Number)}");
    }

    // What no book describes can do any harm.
    private SoldNumber LookAlike(NearNumber twin, NearestNumber[] nearest)
    {
        var ease = Danger.Ease(twin, sameToTheEye: false);
        var danger = Codes.Of(Danger.Level(ease, Danger.NotKnownHarm));
        var name = _facts.FindPart(twin.Number.Part).Part?.Name ?? twin.Number.Written;
        return new SoldNumber(SoldVerdict.LookAlikeCharacters, null, [], nearest, [new LookAlikeWarning(twin.Number.Part, name, danger, null,
                $"Ease {ease} (only look-alike characters differ) × harm {Danger.NotKnownHarm} (it is in no book, so what a mix-up does is not known).")],
            $"in no book, but reads like {Say(twin.Number)}: danger {danger}, look at each 0 and O, 1 and I again");
    }

    private IReadOnlyList<LookAlikeWarning> DangersOf(string part)
    {
        if (!_dangers.TryGetValue(part, out var dangers))
        {
            _dangers.Add(part, dangers = _facts.FindPart(part).Part is { } described ? [.. LookAlikeSearch.Warn(_facts, described, null).Take(MostDangers)] : []);
        }

        return dangers;
    }

    private string Say(PartNumber number) =>
        number.Part == $"{number.Maker}:{number.Written}" ? Named(number.Part) : $"{number.Written}, a number of {Named(number.Part)}";

    private string Named(string part) => _facts.FindPart(part).Part is { } described ? $"{part} ({described.Name})" : part;

    private static string Say(IReadOnlyList<LookAlikeWarning> dangers) => dangers.Count == 0 ? ""
        : $"; taken for it: {string.Join("; ", dangers.Select(one => $"{one.Part} (danger {one.Danger}{(one.TellApart is null ? "" : $", {one.TellApart}")})"))}";

    // A part's own number means that part; a further number counts where there is none.
    private SoldNumber Known(PartNumber[] numbers)
    {
        var own = Array.FindAll(numbers, number => number.Part == $"{number.Maker}:{number.Written}");
        string[] parts = [.. (own.Length > 0 ? own : numbers).Select(number => number.Part).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        if (parts is [var part] && Array.Exists(numbers, number => number.Identifies))
        {
            var dangers = DangersOf(part);
            return _scope.Contains(part)
                ? new SoldNumber(SoldVerdict.KnownPart, part, [], [], dangers, $"it is {Named(part)}{Say(dangers)}")
                : new SoldNumber(SoldVerdict.KnownElsewhere, part, [], [], dangers,
                    $"it is {Named(part)}, which stands in a book that this one does not use; the offer is kept by its number{Say(dangers)}");
        }

        return new SoldNumber(
            SoldVerdict.NarrowsOnly, null, parts, [], [],
            parts.Length == 1
                ? $"a casting mark or grade that is known on {Named(parts[0])}, but names no part; the offer is kept by its number"
                : $"it can mean {string.Join(" or ", parts.Select(Named))}; the offer is kept by its number until one is named");
    }
}

using System.Collections.Frozen;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Buying;

/// <summary>What is the number that a seller writes?</summary>
/// <param name="Part">The one part that it names; null for any other verdict than <see cref="SoldVerdict.KnownPart"/> and <see cref="SoldVerdict.KnownElsewhere"/>.</param>
/// <param name="Candidates">Parts that it can mean where it names several or only narrows.</param>
/// <param name="Nearest">Of a number in no book: the nearest known ones, likeliest first, at most three.</param>
public sealed record SoldNumber(SoldVerdict Verdict, string? Part, IReadOnlyList<string> Candidates, IReadOnlyList<NearestNumber> Nearest, string Text)
{
    /// <summary>The part that the offer is recorded with; null where it is recorded by its number alone.</summary>
    public string? Recorded => Verdict == SoldVerdict.KnownPart ? Part : null;
}

/// <summary>What the number of an offer turned out to be.</summary>
public enum SoldVerdict
{
    /// <summary>It names one part that the book may speak of.</summary>
    KnownPart,

    /// <summary>It names one part, but of a book that this one does not use: the offer is recorded by its number.</summary>
    KnownElsewhere,

    /// <summary>It stands on several parts, or only as a casting mark: the offer is recorded by its number.</summary>
    SeveralParts,

    /// <summary>In no book, but it reads like a known number once 0 and O, 1 and I and the like count as one.</summary>
    LookAlike,

    /// <summary>In no book.</summary>
    Unknown,
}

/// <summary>The numbers of the base, ready to be asked for those of a price list.</summary>
public sealed class SoldNumbers
{
    private const int MostNearest = 3;

    private readonly LookAlikeIndex _index;
    private readonly IReadOnlySet<string> _scope;
    private readonly FrozenDictionary<string, PartNumber[]> _byKey;

    /// <param name="index">Every number of the base.</param>
    /// <param name="scope">Ids of the parts that the book may refer to.</param>
    public SoldNumbers(LookAlikeIndex index, IReadOnlySet<string> scope) =>
        (_index, _scope, _byKey) = (index, scope, index.All.GroupBy(number => number.Key).ToFrozenDictionary(group => group.Key, group => group.ToArray(),
            StringComparer.Ordinal));

    public bool IsKnown(string written) => _byKey.ContainsKey(NumberKey.Of(written));

    public SoldNumber Judge(string written)
    {
        var key = NumberKey.Of(written);
        if (_byKey.GetValueOrDefault(key) is { } numbers)
        {
            return Known(numbers);
        }

        // Numbers alone do not tell which of two parts with one number is meant, so each number is named once.
        var near = _index.Find(key).DistinctBy(one => one.Number.Key).ToList();
        NearestNumber[] nearest = [.. near.Take(MostNearest).Select(one => new NearestNumber(one.Number.Written, one.Number.Part, one.Edits))];
        return near.Find(one => one.FoldedEdits == 0) is { } twin
            ? new SoldNumber(SoldVerdict.LookAlike, null, [], nearest,
                $"in no book, but reads like {twin.Number.Written} ({twin.Number.Part}): look at each 0 and O, 1 and I again")
            : new SoldNumber(SoldVerdict.Unknown, null, [], nearest, nearest is [] ? "in no book, and no known number is near it"
                : $"in no book; the nearest is {nearest[0].Number} ({nearest[0].Part})");
    }

    // A part's own number means that part; a further number counts where there is none.
    private SoldNumber Known(PartNumber[] numbers)
    {
        var own = Array.FindAll(numbers, number => number.Part == $"{number.Maker}:{number.Written}");
        string[] parts = [.. (own.Length > 0 ? own : numbers).Select(number => number.Part).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        if (parts is [var part] && Array.Exists(numbers, number => number.Identifies))
        {
            return _scope.Contains(part)
                ? new SoldNumber(SoldVerdict.KnownPart, part, [], [], $"it is {part}")
                : new SoldNumber(SoldVerdict.KnownElsewhere, part, [], [],
                    $"it is {part}, which stands in a book that this one does not use; the offer is kept by its number");
        }

        return new SoldNumber(
            SoldVerdict.SeveralParts, null, parts, [],
            parts.Length == 1
                ? $"a casting mark or grade that is known on {parts[0]}, but names no part; the offer is kept by its number"
                : $"it can mean {string.Join(" or ", parts)}; the offer is kept by its number until one is named");
    }
}

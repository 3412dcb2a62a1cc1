using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Listings;

/// <summary>The numbers of a listing.</summary>
/// <param name="Numbers">By passage, then by where they stand. One stretch comes once for each key that it looks alike to.</param>
/// <param name="UnknownLeftOut">How many more were only shaped like numbers; the first <see cref="NumberFinder.MostUnknown"/> are kept.</param>
public sealed record FoundNumbers(IReadOnlyList<FoundNumber> Numbers, int UnknownLeftOut);

/// <summary>
/// Finds part numbers in the words of a listing: every number of the base, however it is written, then what only has the shape of one.
/// Immutable and costly to build: keep it until the base changes.
/// </summary>
/// <remarks>
/// Known numbers: the longest wins and nothing stands over it. Which bounds it needs, <see cref="NumberBounds"/>; when a short one counts,
/// <see cref="ShortNumbers"/>; when one is read through characters that look alike, <see cref="LookAlikeReading"/>. The same number in two
/// passages is found in both.
/// </remarks>
public sealed class NumberFinder
{
    /// <summary>Numbers that are not in the base, kept of one listing. Ours, no source.</summary>
    public const int MostUnknown = 200;

    private readonly NumberIndex _index;

    /// <param name="numbers">Every number of every part, marks and grades too, in any order.</param>
    public NumberFinder(IEnumerable<PartNumber> numbers) => _index = new NumberIndex(numbers);

    /// <summary>Every number of the passages.</summary>
    public FoundNumbers Find(IReadOnlyList<Passage> passages)
    {
        var numbers = new List<FoundNumber>();
        var (kept, leftOut) = (0, 0);
        for (var index = 0; index < passages.Count; index++)
        {
            var passage = new PassageText(passages[index], index);
            var spans = SpansOf(passage);
            var roles = spans.Count == 0
                ? []
                : NumberRoles.Of(passage, [.. spans.Select(span => (passage.Keys.Start(span.From), passage.Keys.End(span.To - 1)))]);
            if (spans.Count == 1 && roles[0] == NumberRole.Mentioned && index > 0 && IsAnnounced(passage, spans[0], passages[index - 1]))
            {
                roles = [NumberRole.Sold];
            }

            for (var span = 0; span < spans.Count; span++)
            {
                if (spans[span].Known.Count > 0)
                {
                    numbers.AddRange(KnownNumbers(passage, spans[span], roles[span]));
                }
                else if (kept < MostUnknown)
                {
                    kept++;
                    numbers.Add(Number(passage, spans[span], spans[span].Key, [], UnknownReading(passage.Keys, spans[span]), roles[span]));
                }
                else
                {
                    leftOut++;
                }
            }
        }

        return new FoundNumbers(numbers, leftOut);
    }

    // "The part number on the flange is", and the number alone on the line below. Ours, no source: five words at most between the two.
    private static bool IsAnnounced(PassageText passage, Span span, Passage before)
    {
        if (passage.Passage.Place != PassagePlace.Text || before.Place != PassagePlace.Text || span.From != 0 || span.To != passage.Keys.Length)
        {
            return false;
        }

        var announcing = new PassageText(before, passage.Index - 1);
        var after = announcing.FindCueBefore(before.Text.Length) is { Kind: CueKind.Sold } cue ? before.Text[cue.End..] : null;
        return after is not null && after.AsSpan().IndexOfAny(".!?;") < 0 && after.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length <= MostWordsBetween;
    }

    private const int MostWordsBetween = 5;

    /// <param name="Known">Empty for one that only has the shape.</param>
    /// <param name="IsEnd">Only its end stands there.</param>
    private sealed record Span(int From, int To, string Key, IReadOnlyList<PartNumber> Known, string? Within, bool IsEnd = false);

    private List<Span> SpansOf(PassageText passage)
    {
        var keys = passage.Keys;
        var known = KnownNumberSearch.Find(_index, passage);
        var shaped = NumberShapes.Find(passage, known);
        if (known.Count + shaped.Count == 0)
        {
            return [];
        }

        var taken = new bool[keys.Length];
        known.ForEach(span => taken.AsSpan(span.From, span.To - span.From).Fill(true));
        var ends = known.Select(span => (span.From, span.To)).Concat(shaped.Select(span => (span.From, span.To)))
            .SelectMany(span => SuffixList.Behind(_index, keys, span.From, span.To, keys.Key[span.From..span.To].ToString()))
            .Where(end => !taken.AsSpan(end.From, end.To - end.From).Contains(true))
            .DistinctBy(end => end.From).ToList();
        ends.ForEach(end => taken.AsSpan(end.From, end.To - end.From).Fill(true));
        return
        [
            .. known.Select(span => new Span(span.From, span.To, "", span.Numbers, LongerCode.FindAround(keys, span.From, span.To, index => taken[index])))
                .Concat(ends.Select(end => new Span(end.From, end.To, end.Key, end.Numbers, null, true)))
                .Concat(shaped.Where(span => !taken.AsSpan(span.From, span.To - span.From).Contains(true))
                    .Select(span => new Span(span.From, span.To, keys.Key[span.From..span.To].ToString(), [], null)))
                .OrderBy(span => span.From),
        ];
    }

    private static IEnumerable<FoundNumber> KnownNumbers(PassageText passage, Span span, NumberRole role) =>
        span.Known.Distinct().GroupBy(number => number.Key)
            .Select(same => Number(passage, span, same.Key, [.. same], span.IsEnd ? NumberReading.Broken : Reading(passage.Keys, span, same.Key, [.. same]), role));

    private static FoundNumber Number(PassageText passage, Span span, string key, IReadOnlyList<PartNumber> known, NumberReading read, NumberRole role)
    {
        var (start, end) = (passage.Keys.Start(span.From), passage.Keys.End(span.To - 1));
        return new FoundNumber(passage.Index, start, end - start, passage.Passage.Text[start..end], key, known, read, span.Within, role);
    }

    private static NumberReading Reading(KeyText keys, Span span, string key, PartNumber[] numbers)
    {
        if (!keys.Key[span.From..span.To].SequenceEqual(key))
        {
            return NumberReading.LookAlikeCharacters;
        }

        var written = keys.Written(span.From, span.To);
        if (IsForeign(keys, span) && !Array.Exists(numbers, number => string.Equals(number.Written, written, StringComparison.OrdinalIgnoreCase)))
        {
            return NumberReading.ForeignLetters;
        }

        return !keys.HasBlank(span.From, span.To) || Array.Exists(numbers, number => Grouping.BlanksStandAtBlanks(keys, span.From, number))
            ? NumberReading.AsWritten
            : NumberReading.Broken;
    }

    private static NumberReading UnknownReading(KeyText keys, Span span) =>
        IsForeign(keys, span) ? NumberReading.ForeignLetters : keys.HasBlank(span.From, span.To) ? NumberReading.Broken : NumberReading.AsWritten;

    private static bool IsForeign(KeyText keys, Span span)
    {
        for (var index = span.From; index < span.To; index++)
        {
            if (keys.IsForeign(index))
            {
                return true;
            }
        }

        return false;
    }
}

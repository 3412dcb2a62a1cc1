using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

public sealed class NumberFinderPropertyTests
{
    private static readonly Gen<string> _words = Gen.OneOf("pump", "the shaft", "Dichtung,", "neuve;", "f\u00F6r", "(used)", "\u043D\u0430\u0441\u043E\u0441").Array[0, 4].Select(words => string.Join(' ', words));

    // One to three letters, three to six digits, a letter: never short, and only itself to be looked for.
    private static readonly Gen<string> _key =
        from letters in Gen.String[Gen.Char["ACEHKMPTX"], 1, 3]
        from digits in Gen.String[Gen.Char["123456789"], 3, 6]
        from end in Gen.Char["ACEHKMPTX"]
        select letters + digits + end;

    private static readonly Gen<(string Separator, int Shape)> _way =
        Gen.Select(Gen.OneOf("", "-", " ", ".", "/", "_", " - ", "\u00AD", "\u2011", "\u200B", "\r\n", "\u00A0"), Gen.Int[0, 3]);

    [Fact]
    public void Known_number_written_in_any_way_is_found_with_its_exact_span() =>
        Gen.Select(_key, _way.Array[12, 12], _words, _words).Sample(
            (key, ways, before, behind) =>
            {
                var written = string.Concat(key.Select((letter, index) => Shaped(letter, ways[index].Shape) + (index < key.Length - 1 ? ways[index].Separator : "")));
                var text = $"{before} {written} {behind}";
                var found = FinderExamples.Of(key).Find([FinderExamples.Text(text)]).Numbers.Where(number => number.Known.Count > 0).ToList();
                return found is [{ } only] && only.Start == before.Length + 1 && only.Written == written && only.Key == key && only.Within is null;
            },
            iter: 5_000);

    [Fact]
    public void Text_without_digits_and_keys_gives_nothing() =>
        Gen.String[Gen.Char["abcXYZ\u00E4\u0416\u4E2D -./,;:()\n\u00AD\u200B\u2013\uD800\uDC00\uFFFE\u0301"], 0, 200]
            .Sample(text => FinderExamples.In(text).Count == 0 && FinderExamples.In(FinderExamples.Title(text)).Count == 0, iter: 5_000);

    [Fact]
    public void Any_text_is_read_without_failure_and_every_span_is_what_stands_there() =>
        Gen.String[Gen.Char, 0, 60].Sample(
            noise =>
            {
                var text = noise + " P-26-1147-C " + noise;
                return FinderExamples.In(text) is var found && found.Any(number => number.Key == "P261147C")
                    && found.All(number => text.Substring(number.Start, number.Length) == number.Written && (number.Known.Count == 0 || number.Key.EndsWith(NumberKey.Of(number.Written), StringComparison.Ordinal)));
            },
            iter: 5_000);

    // By definition, for a text without separators: the same characters, no cut between two digits, and six characters or more unless the ends are free.
    [Fact]
    public void Known_numbers_found_are_those_of_a_plain_search() =>
        Gen.Select(Gen.String[Gen.Char["A1C2"], 5, 8].Array[0, 40], Gen.String[Gen.Char["A1C2a,"], 0, 60]).Sample(
            (generated, text) =>
            {
                string[] keys = [.. generated.Where(key => key.Any(char.IsAsciiDigit) && key.Any(char.IsAsciiLetter)).Distinct()];
                var found = FinderExamples.Of(keys).Find([FinderExamples.Text(text)]).Numbers
                    .Where(number => number.Known.Count > 0 && number.Length == number.Key.Length) // without the ends of lists
                    .Select(number => (number.Start, number.Length));
                return found.SequenceEqual(PlainSearch(keys, text.ToUpperInvariant()));
            },
            iter: 20_000);

    [Fact]
    public void Order_of_the_base_does_not_matter() =>
        Gen.Select(Gen.String[Gen.Char["A1I0O"], 5, 7].Array[0, 40], Gen.String[Gen.Char["A1IO0- ,"], 0, 60]).Sample(
            (keys, text) => FinderExamples.Of([.. keys.Distinct()]).Find([FinderExamples.Text(text)]).Numbers.Select(Summary)
                .SequenceEqual(FinderExamples.Of([.. keys.Distinct().Reverse()]).Find([FinderExamples.Text(text)]).Numbers.Select(Summary)),
            iter: 2_000);

    private static (int Start, string Key, NumberReading Read, string Known) Summary(FoundNumber number) =>
        (number.Start, number.Key, number.Read, string.Join(' ', number.Known.Select(known => known.Written)));

    private static string Shaped(char letter, int shape) => shape switch
    {
        0 => char.ToLowerInvariant(letter).ToString(),
        1 => ((char)(letter + 0xFEE0)).ToString(), // full width
        _ => letter.ToString(),
    };

    private static IEnumerable<(int Start, int Length)> PlainSearch(string[] keys, string text)
    {
        var all =
            from key in keys
            from start in Enumerable.Range(0, text.Length)
            where string.CompareOrdinal(text, start, key, 0, key.Length) == 0 && !CutsDigits(text, start) && !CutsDigits(text, start + key.Length)
                && (key.Length >= 6 || (!IsGlued(text, start) && !IsGlued(text, start + key.Length)))
            orderby key.Length descending, start
            select (Start: start, key.Length);
        var chosen = new List<(int Start, int Length)>();
        foreach (var one in all)
        {
            if (chosen.TrueForAll(other => one.Start + one.Length <= other.Start || other.Start + other.Length <= one.Start))
            {
                chosen.Add(one);
            }
        }

        return chosen.Order();
    }

    private static bool IsGlued(string text, int cut) => cut > 0 && cut < text.Length && char.IsAsciiLetterOrDigit(text[cut - 1]) && char.IsAsciiLetterOrDigit(text[cut]);

    private static bool CutsDigits(string text, int cut) => cut > 0 && cut < text.Length && char.IsAsciiDigit(text[cut - 1]) && char.IsAsciiDigit(text[cut]);
}

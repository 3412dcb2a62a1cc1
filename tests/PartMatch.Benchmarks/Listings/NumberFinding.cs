using System.Buffers;
using BenchmarkDotNet.Attributes;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;

namespace PartMatch.Benchmarks.Listings;

/// <summary>
/// A page of 200 kB against a base of a million numbers. The peers search the page's key, made beforehand: they do not look back at the text,
/// know no bounds, no look-alike characters, no roles and no unknown numbers.
/// </summary>
[MemoryDiagnoser]
public class NumberFinding
{
    private const int Numbers = 1_000_000;
    private const int FewNumbers = 10_000;
    private const int Characters = 200_000;

    private Passage[] _page = [];
    private Passage[] _words = [];
    private string[] _keys = [];
    private string[] _keysOfPage = [];
    private NumberFinder _finder = new([]);
    private SearchValues<string>? _fewValues;
    private Dictionary<string, PartNumber>.AlternateLookup<ReadOnlySpan<char>> _byKey;

    [GlobalSetup]
    public void Prepare()
    {
        var numbers = NumberCatalogue.Numbers(Numbers);
        _page = NumberCatalogue.Page(numbers, Characters);
        _words = [.. _page.Select(passage => passage with { Text = new string([.. passage.Text.Where(letter => !char.IsAsciiDigit(letter))]) })];
        _keys = [.. numbers.Select(number => number.Key)];
        _keysOfPage = [.. _page.Select(passage => NumberKey.Of(passage.Text))];
        _finder = new NumberFinder(numbers);
        _fewValues = SearchValues.Create(_keys.AsSpan(0, FewNumbers), StringComparison.Ordinal);
        var byKey = new Dictionary<string, PartNumber>(StringComparer.Ordinal);
        foreach (var number in numbers)
        {
            byKey[number.Key] = number;
        }

        _byKey = byKey.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    [Benchmark(Baseline = true)]
    public int Find_in_200_kB() => _finder.Find(_page).Numbers.Count;

    /// <summary>The same page without its digits: what a page costs that holds no number.</summary>
    [Benchmark]
    public int Find_in_words_alone() => _finder.Find(_words).Numbers.Count;

    /// <summary>The same numbers of the same page in a dictionary: every stretch of 7 to 10 key characters is looked up.</summary>
    [Benchmark]
    public int Dictionary_of_every_stretch()
    {
        var found = 0;
        foreach (var key in _keysOfPage)
        {
            for (var start = 0; start < key.Length; start++)
            {
                for (var length = 7; length <= 10 && start + length <= key.Length; length++)
                {
                    found += _byKey.ContainsKey(key.AsSpan(start, length)) ? 1 : 0;
                }
            }
        }

        return found;
    }

    /// <summary>The multi-pattern search of .NET, over a hundredth of the numbers; it is not made for a million.</summary>
    [Benchmark]
    public int SearchValues_of_10_000()
    {
        var found = 0;
        foreach (var key in _keysOfPage)
        {
            for (var rest = key.AsSpan(); rest.IndexOfAny(_fewValues!) is >= 0 and var at; rest = rest[(at + 1)..])
            {
                found++;
            }
        }

        return found;
    }

    /// <summary>One search for each of a thousand numbers; a million would take a thousand times as long.</summary>
    [Benchmark]
    public int Contains_of_1_000()
    {
        var found = 0;
        foreach (var key in _keysOfPage)
        {
            foreach (var number in _keys.AsSpan(0, 1000))
            {
                found += key.Contains(number, StringComparison.Ordinal) ? 1 : 0;
            }
        }

        return found;
    }

    /// <summary>The floor: making the number key of the page.</summary>
    [Benchmark]
    public int Key_of_the_page()
    {
        var length = 0;
        foreach (var passage in _page)
        {
            length += NumberKey.Of(passage.Text).Length;
        }

        return length;
    }
}

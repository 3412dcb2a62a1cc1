using System.Text;
using AngleSharp.Html.Parser;
using BenchmarkDotNet.Attributes;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Tests.LookAlikes;

namespace PartMatch.Benchmarks.Listings;

/// <summary>
/// The whole way of a saved page of 200 kB, from its bytes to the verdict, against a base of a million numbers that is kept in memory. The first three
/// after it are its parts; the rest are peers that do far less.
/// </summary>
[MemoryDiagnoser]
public class PageJudging
{
    private const int Numbers = 1_000_000;
    private const int Bytes = 200_000;

    private ListingDocument _document = new(ListingFormat.Html, ReadOnlyMemory<byte>.Empty);
    private NumberFinder _finder = new([]);
    private ListingFacts? _facts;
    private ListingQuestion _question = new(null, null);
    private ReadListing? _read;
    private FoundNumbers? _found;
    private string _html = "";
    private HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _written;

    [GlobalSetup]
    public void Prepare()
    {
        Part[] parts = [WrenFamily.Pump(WrenFamily.PumpC, "short", "clockwise", 12.0m), WrenFamily.Pump(WrenFamily.PumpE, "short", "anticlockwise", 12.0m)];
        var family = WrenFamily.Wren(
            parts, [WrenFamily.Fitted("wa", "coolant-pump", WrenFamily.PumpC), WrenFamily.Fitted("wb", "coolant-pump", WrenFamily.PumpE)]);
        var numbers = NumberCatalogue.Numbers(Numbers);
        var facts = WrenFamily.Facts([family], parts, numbers);
        _document = new ListingDocument(ListingFormat.Html, SellersPage.Of(parts[0].Number, numbers, Bytes));
        _finder = new NumberFinder(facts.Numbers.All);
        _facts = new ListingFacts(facts, Array.Empty<ContentsRow>().ToLookup(row => row.Set));
        _question = new ListingQuestion(new NeededPlace(family, "wa", "coolant-pump"), null);
        _html = Encoding.UTF8.GetString(_document.Bytes.Span);
        _written = numbers.Select(number => number.Written).ToHashSet(StringComparer.Ordinal).GetAlternateLookup<ReadOnlySpan<char>>();
        _read = Read();
        _found = Find();
        Console.WriteLine(FormattableString.Invariant(
            $"// {_document.Bytes.Length:N0} bytes, {_read.Passages.Count} passages, {_read.VisibleText.Length:N0} visible characters; ")
            + FormattableString.Invariant($"numbers: {_found.Numbers.Count(number => number.Known.Count > 0)} known, ")
            + FormattableString.Invariant($"{_found.Numbers.Count(number => number.Known.Count == 0)} unknown; {Decide().HeadlineText}"));
    }

    [Benchmark(Baseline = true)]
    public ListingAnswer Read_find_and_decide()
    {
        var read = ((ListingReading.Read)ListingReader.Read(_document, ListingBounds.Usual)).Listing;
        return ListingMatch.Decide(_facts!, _question, read, _finder.Find(read.Passages));
    }

    [Benchmark]
    public ReadListing Read() => ((ListingReading.Read)ListingReader.Read(_document, ListingBounds.Usual)).Listing;

    [Benchmark]
    public FoundNumbers Find() => _finder.Find(_read!.Passages);

    [Benchmark]
    public ListingAnswer Decide() => ListingMatch.Decide(_facts!, _question, _read!, _found!);

    /// <summary>Parsing alone, with the parser that the reader uses, and the text of the page as it stands, scripts and all.</summary>
    [Benchmark]
    public int Parse_and_text_content()
    {
        using var parsed = new HtmlParser().ParseDocument(_html);
        return parsed.DocumentElement.TextContent.Length;
    }

    /// <summary>Every piece of the bare file between blanks, brackets or quotes asked of a set of the numbers as written:
    /// no structure, no broken numbers, no look-alikes, no verdict.</summary>
    [Benchmark]
    public int Set_of_every_token()
    {
        var found = 0;
        foreach (var piece in _html.AsSpan().SplitAny(" \n\"<>,;:"))
        {
            found += _written.Contains(_html.AsSpan()[piece]) ? 1 : 0;
        }

        return found;
    }
}

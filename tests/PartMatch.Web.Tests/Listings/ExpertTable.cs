using System.Globalization;
using System.Text.RegularExpressions;

namespace PartMatch.Web.Tests.Listings;

/// <summary>One row of a table of saved pages: what a careful builder answers about a page.</summary>
/// <param name="Folder">Where the page and its table lie.</param>
/// <param name="Question">The query of the route; empty where no engine is named.</param>
/// <param name="Verdicts">By number, written without blanks, hyphens, dots and slashes.</param>
/// <param name="Offers">Of the page; with <paramref name="GoesOn"/> there are others beside them.</param>
public sealed record ExpertRow(
    string Folder,
    string Page,
    string Question,
    string Headline,
    IReadOnlyDictionary<string, string> Verdicts,
    IReadOnlyList<ExpertOffer> Offers,
    bool GoesOn);

/// <param name="Price">The sum and its currency; what is written where it can be read in several ways.</param>
/// <param name="Condition">In the answer's words; null where the table names none.</param>
public sealed record ExpertOffer(string Price, bool Ambiguous, Expected Shipping, Expected Days, string? Condition = null);

/// <param name="Value">Null where the page does not state it.</param>
/// <param name="Said">Stands in running words only: it may be missing from an answer, and may not be another value.</param>
public sealed record Expected(string? Value, bool Said);

/// <summary>Reads the tables: of the demo's pages, and of those that lie with these tests and were answered before any reader had seen them.</summary>
public static partial class ExpertTable
{
    private const string None = "none";

    private const string NotStated = "-";

    private const string Said = " said";

    public static IReadOnlyList<string> Folders { get; } =
    [
        Path.Combine(Repository.Folder, "data-seed", "listings"),
        Path.Combine(Repository.Folder, "tests", "PartMatch.Web.Tests", "Listings", "pages"),
    ];

    public static IReadOnlyList<ExpertRow> Rows { get; } =
    [
        .. Folders.SelectMany(folder => File.ReadAllLines(Path.Combine(folder, "README.md"))
            .Where(line => line.StartsWith("| `", StringComparison.Ordinal))
            .Select(line => Row(folder, line))),
    ];

    /// <summary>A number without what only separates.</summary>
    public static string Key(string number) => Separators().Replace(number, "").ToUpperInvariant();

    /// <summary>"39.90 EUR" and "39.9 EUR" are one price.</summary>
    public static string Money(string amount, string currency) =>
        $"{decimal.Parse(amount, CultureInfo.InvariantCulture).ToString("0.####", CultureInfo.InvariantCulture)} {currency}";

    private static ExpertRow Row(string folder, string line)
    {
        var cells = line.Trim('|').Split('|').Select(cell => cell.Trim()).ToArray();
        Assert.True(cells.Length == 6, $"{cells.Length} cells where six are expected: {line}");
        string[] offers = cells[4] == None ? [] : cells[4].Split(';', StringSplitOptions.TrimEntries);
        return new ExpertRow(
            folder,
            cells[0].Trim('`'),
            cells[1] == None ? "" : cells[1].Trim('`'),
            cells[2],
            cells[3] == NotStated ? new Dictionary<string, string>() : Verdicts(cells[3]),
            [.. offers.Where(offer => offer != "…").Select(Offer)],
            offers.Contains("…"));
    }

    private static Dictionary<string, string> Verdicts(string cell) =>
        cell.Split(',', StringSplitOptions.TrimEntries).Select(one => one.Split('=')).ToDictionary(one => Key(one[0]), one => one[1]);

    private static ExpertOffer Offer(string cell)
    {
        var parts = cell.Split(',', StringSplitOptions.TrimEntries);
        return parts is [var one] && one.StartsWith("ambiguous ", StringComparison.Ordinal)
            ? new ExpertOffer(one["ambiguous ".Length..], true, new Expected(null, Said: true), new Expected(null, Said: true))
            : new ExpertOffer(MoneyOf(parts[0]), false, Read(parts[1], "shipping ", MoneyOf), Read(parts[2], "days ", days => days), parts.ElementAtOrDefault(3));
    }

    private static Expected Read(string part, string name, Func<string, string> value)
    {
        Assert.StartsWith(name, part, StringComparison.Ordinal);
        var said = part.EndsWith(Said, StringComparison.Ordinal);
        var text = said ? part[name.Length..^Said.Length] : part[name.Length..];
        return new Expected(text == NotStated ? null : value(text), said);
    }

    private static string MoneyOf(string text) =>
        text.Split(' ') is [var amount, var currency] ? Money(amount, currency) : throw new FormatException($"'{text}' is no sum and currency");

    [GeneratedRegex(@"[\s./\\-]+")]
    private static partial Regex Separators();
}

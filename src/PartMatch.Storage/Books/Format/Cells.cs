using System.Text.RegularExpressions;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Storage.Books.Format;

/// <summary>The rules for single cells.</summary>
internal static partial class Cells
{
    /// <summary>Beyond this the factors of the unit table could leave the range of a decimal; nothing on an engine comes near.</summary>
    private const decimal MaxMagnitude = 1_000_000_000_000m;

    public static CellRule Text { get; } = new("text without control characters and without marks that turn the direction of writing", IsText);

    public static CellRule Code { get; } = new("a code of a-z, 0-9 and single hyphens, such as coolant-pump", cell => IsCode(cell), MendCode);

    public static CellRule CodeList { get; } = Code.Listed();

    /// <summary>One value of a choice feature.</summary>
    public static CellRule Word { get; } = new(
        "a word without blanks and |", cell => IsText(cell) && cell.Length > 0 && !cell.Contains('|', StringComparison.Ordinal) && !cell.Any(char.IsWhiteSpace));

    public static CellRule WordList { get; } = Word.Listed();

    public static CellRule Number { get; } = new(
        "a plain number: digits, one decimal point, an optional leading minus", cell => FindNumber(cell) is not null, MendNumber);

    public static CellRule NotNegative { get; } = new("a plain number, zero or more", cell => FindNumber(cell) >= 0, MendNumber);

    public static CellRule Whole { get; } = new("a whole number, digits only", cell => FindWhole(cell) is not null, MendNumber);

    // One digit, so that the passes of a fastener stand in their order also where rows are sorted as text.
    public static CellRule Pass { get; } = new("the number of the pass, 1 to 9", cell => cell is [>= '1' and <= '9']);

    public static CellRule Date { get; } = new("a date as YYYY-MM or YYYY-MM-DD", cell => BuildDate.Find(cell) is not null);

    /// <summary>Ages are counted in days, so a month alone is not enough.</summary>
    public static CellRule Day { get; } = new("a day as YYYY-MM-DD", cell => cell.Length == "2026-06-01".Length && Date.Accepts(cell));

    public static CellRule Unit { get; } = new("a unit of the unit table", cell => UnitTable.Find(cell)?.Symbol == cell, cell => UnitTable.Find(cell)?.Symbol);

    public static CellRule YesNo { get; } = OneOf(["no", "yes"]);

    public static CellRule Currency { get; } = new(
        "an ISO 4217 code such as EUR", cell => Currencies.FindDigits(cell) is not null, cell => cell.ToUpperInvariant());

    public static CellRule CautionList { get; } = OneOf(Cautions.All).Listed();

    public static CellRule Part { get; } = new(
        $"maker:number, the number with at least one and at most {NumberKey.MaxLength} letters and digits",
        IsPart);

    public static CellRule PartList { get; } = Part.Listed();

    public static CellRule PartOrNone { get; } = new($"{Part.Expected}; or none", cell => cell == Core.Catalogue.Part.None || Part.Accepts(cell));

    /// <summary>Neighbours of a part at other positions.</summary>
    public static CellRule Neighbours { get; } = new CellRule($"position=maker:number, or position=none", IsNeighbour).Listed();

    /// <summary>A picture by the digest of its bytes.</summary>
    public static CellRule Image { get; } = new("the SHA-256 of a picture in small hexadecimal digits with .jpg or .png", cell => ImageShape().IsMatch(cell));

    /// <summary>A text by the digest of its bytes in UTF-8.</summary>
    public static CellRule Digest { get; } = new("the SHA-256 of the text in 64 small hexadecimal digits", cell => DigestShape().IsMatch(cell));

    public static CellRule Country { get; } = new(
        "an ISO 3166 code of two capital letters such as GB", cell => cell.Length == 2 && cell.All(char.IsAsciiLetterUpper), cell => cell.ToUpperInvariant());

    /// <summary>Read by <c>StackTerms</c>, which explains its faults itself.</summary>
    public static CellRule Terms { get; } = Text;

    /// <summary>A closed vocabulary.</summary>
    public static CellRule OneOf(IReadOnlyList<string> words) =>
        new("one of: " + string.Join(", ", words), cell => words.Contains(cell, StringComparer.Ordinal), cell => NearestCode.Find(cell, words))
        {
            Words = words,
        };

    public static CellRule OneOf<T>()
        where T : struct, Enum => OneOf(Codes.All<T>());

    public static decimal? FindNumber(string cell) =>
        QuantityParser.FindNumber(cell) is { } number && Math.Abs(number) <= MaxMagnitude ? number : null;

    /// <summary>A whole number of at most 15 digits, or null.</summary>
    public static long? FindWhole(string cell) =>
        cell.Length is > 0 and <= 15 && cell.All(char.IsAsciiDigit) ? (long)decimal.Parse(cell, System.Globalization.CultureInfo.InvariantCulture) : null;

    [GeneratedRegex(@"^[0-9a-f]{64}\.(jpg|png)$", RegexOptions.CultureInvariant)]
    private static partial Regex ImageShape();

    [GeneratedRegex("^[0-9a-f]{64}$", RegexOptions.CultureInvariant)]
    private static partial Regex DigestShape();

    [GeneratedRegex("[^a-z0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex NotOfACode();

    // A line feed and a tab may stand in a note; other control characters are damage.
    private static bool IsText(string cell) => !cell.AsSpan().ContainsAnyExceptInRange(' ', '~')
        || !cell.Any(letter => (char.IsControl(letter) && letter is not ('\n' or '\t')) || IsTurning(letter));

    /// <summary>Runs of a-z and 0-9 with single hyphens between them.</summary>
    private static bool IsCode(ReadOnlySpan<char> cell)
    {
        var isRun = false;
        foreach (var letter in cell)
        {
            if (letter is (>= 'a' and <= 'z') or (>= '0' and <= '9'))
            {
                isRun = true;
            }
            else if (letter == '-' && isRun)
            {
                isRun = false;
            }
            else
            {
                return false;
            }
        }

        return isRun;
    }

    // Embeddings, overrides and isolates of the Unicode Bidirectional Algorithm (UAX #9) can show a part number backwards: what is read would not be what is stored.
    private static bool IsTurning(char letter) => letter is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    private static bool IsPart(string cell) =>
        PartId.FindKey(cell) is { } key
        && cell.IndexOf(':', StringComparison.Ordinal) is var colon
        && IsCode(cell.AsSpan(0, colon))
        && key.Length - colon - 1 <= NumberKey.MaxLength
        && IsText(cell)
        && !cell.Contains('|', StringComparison.Ordinal);

    private static bool IsNeighbour(string cell) =>
        cell.IndexOf('=', StringComparison.Ordinal) is > 0 and var at && IsCode(cell.AsSpan(0, at)) && PartOrNone.Accepts(cell[(at + 1)..]);

    private static string? MendCode(string cell) => NotOfACode().Replace(cell.ToLowerInvariant(), "-").Trim('-');

    private static string? MendNumber(string cell) =>
        cell.Count(letter => letter == ',') == 1 && !cell.Contains('.', StringComparison.Ordinal) ? cell.Replace(',', '.') : cell.TrimStart('+');
}

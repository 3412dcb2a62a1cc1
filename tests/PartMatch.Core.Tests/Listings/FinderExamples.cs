using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;

namespace PartMatch.Core.Tests.Listings;

/// <summary>A small invented base, and short ways to ask for the numbers of a text.</summary>
internal static class FinderExamples
{
    public static NumberFinder Base { get; } = Of(
        "P-26-1147-A", "P-26-1147-B", "P-26-1147-C", "QX41-2075-A", "M8-4410-O", "16-1207-R", "HS2C-1000", "77-2041", "7514", "T231", "I-1801", "0930150123", "4412087");

    public static NumberFinder Of(params string[] written) => new(written.Select(Number));

    public static PartNumber Number(string written) => new("pellworth", written, NumberKey.Of(written), NumberSort.Service, "pellworth:" + written);

    public static Passage Text(string text) => new(PassagePlace.Text, "text", text);

    public static Passage Title(string text) => new(PassagePlace.Title, "title", text);

    public static Passage Stated(NumberProperty property, string text) => new(PassagePlace.Property, "property", text, null, property);

    public static IReadOnlyList<FoundNumber> In(Passage passage) => Base.Find([passage]).Numbers;

    public static IReadOnlyList<FoundNumber> In(string text) => In(Text(text));

    /// <summary>Known numbers as the base writes them, unknown ones by their key.</summary>
    public static string Named(IEnumerable<FoundNumber> numbers) =>
        string.Join(' ', numbers.Select(number => number.Known.Count > 0 ? number.Known[0].Written : "?" + number.Key));

    /// <summary>"Fits P-26-1147-A" for each.</summary>
    public static string Roles(Passage passage) =>
        string.Join(", ", In(passage).Select(number => $"{number.Role} {(number.Known.Count > 0 ? number.Known[0].Written : "?" + number.Key)}"));
}

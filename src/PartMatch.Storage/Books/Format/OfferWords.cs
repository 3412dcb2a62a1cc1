using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;

namespace PartMatch.Storage.Books.Format;

/// <summary>The closed vocabularies of offers, which are those that listings are read in; what a listing does not state is an empty cell.</summary>
internal static class OfferWords
{
    public static IReadOnlyList<string> Conditions { get; } = Stated(ItemCondition.NotStated);

    public static IReadOnlyList<string> Levels { get; } = Stated(AssemblyLevel.NotStated);

    /// <summary>Who pays for sending a part back.</summary>
    public static IReadOnlyList<string> FreightBack { get; } = Stated(Core.Listings.FreightBack.NotStated);

    private static IReadOnlyList<string> Stated<T>(T notStated)
        where T : struct, Enum => [.. Codes.All<T>().Where(code => code != Codes.Of(notStated))];
}

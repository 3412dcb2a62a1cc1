namespace PartMatch.Core.Buying;

/// <summary>How far offers are reckoned. Ours, no source.</summary>
public static class OfferBounds
{
    /// <summary>Pieces of a question or of a pack, or packs in stock.</summary>
    public const int MostPieces = 1_000_000;

    /// <summary>Days after which an offer counts as old where the question names none.</summary>
    public const int StaleAfterDays = 30;

    public const int MostStaleAfterDays = 3650;
}

namespace PartMatch.Core.LookAlikes;

/// <summary>How often a part is offered, and how often one part came in place of another: counted, never estimated.</summary>
/// <param name="OffersByPart">Offers seen of a part, by its id; a part that is missing was not counted, which is not the same as 0.</param>
/// <param name="MixUps">Ordered by asked part, then sent part, ordinal.</param>
public sealed record Odds(IReadOnlyDictionary<string, int> OffersByPart, IReadOnlyList<MixUpCount> MixUps)
{
    /// <summary>Nothing is counted.</summary>
    public static Odds None { get; } = new(new Dictionary<string, int>(), []);

    /// <summary>Was the one delivered in place of the other, whichever of them was ordered?</summary>
    public bool CameInstead(string? one, string? other) => MixUps.Any(count =>
        count.Wrong > 0 && ((count.Asked == one && count.Sent == other) || (count.Asked == other && count.Sent == one)));

    /// <summary>Offers seen of a part; 0 also where nobody counted.</summary>
    public int OffersOf(string part) => OffersByPart.GetValueOrDefault(part);
}

/// <summary>How often another part was delivered than the one that was asked for.</summary>
/// <param name="Asked">Id of the part that was ordered.</param>
/// <param name="Sent">Id of the part that came instead.</param>
/// <param name="Deliveries">Deliveries of the asked part that were looked at, right and wrong ones; 0 or more.</param>
/// <param name="Wrong">Those of them in which the sent part came; at most <paramref name="Deliveries"/>.</param>
public sealed record MixUpCount(string Asked, string Sent, int Deliveries, int Wrong);

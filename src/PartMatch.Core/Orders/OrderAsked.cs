namespace PartMatch.Core.Orders;

/// <summary>An order as it is told: what is left out is taken from the offers and the seller as they are on the day.</summary>
public sealed record OrderAsked(IReadOnlyList<OrderLineAsked> Lines)
{
    /// <summary>As <c>book/seller</c>; left out, that of the offers, or nobody of the base.</summary>
    public string? Seller { get; init; }

    /// <summary>A day; today when left out.</summary>
    public string? OrderedOn { get; init; }

    public string? ExpectedOn { get; init; }

    /// <summary>For the whole parcel, in the currency of the build.</summary>
    public string? Sending { get; init; }

    public string? Reference { get; init; }

    public string? Note { get; init; }
}

/// <summary>A line as it is told: an offer and how often it is taken, or a part with its pieces and price.</summary>
public sealed record OrderLineAsked
{
    /// <summary>As <c>book/offer</c>.</summary>
    public string? Offer { get; init; }

    /// <summary>How often the offer's price is paid; 1 when left out.</summary>
    public int? Packs { get; init; }

    /// <summary>Id of the part; left out, that of the offer.</summary>
    public string? Part { get; init; }

    /// <summary>All of them; left out, as the offer's packs hold.</summary>
    public int? Pieces { get; init; }

    /// <summary>Of all pieces, in the currency of the build; left out, as offered.</summary>
    public string? Price { get; init; }

    public string? Import { get; init; }

    public string? Deposit { get; init; }

    /// <summary>Left out, as offered.</summary>
    public bool? IsNew { get; init; }

    /// <summary>Positions that it is bought for.</summary>
    public IReadOnlyList<string> For { get; init; } = [];
}

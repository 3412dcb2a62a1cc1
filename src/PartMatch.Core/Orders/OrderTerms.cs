using PartMatch.Core.Buying;

namespace PartMatch.Core.Orders;

/// <summary>What was agreed with a seller, as it stood on the day of ordering: what an offer says later changes nothing of it.</summary>
/// <param name="Seller">As <c>book/seller</c>; null where nobody of the base sold it, and <see cref="Note"/> says who did.</param>
/// <param name="OrderedOn">A day, <c>2026-11-23</c>.</param>
/// <param name="ExpectedOn">The day by which all of it should be there; null where the seller says nothing of it.</param>
/// <param name="Currency">Of the build; every amount of the order is in it.</param>
/// <param name="Sending">For the whole parcel.</param>
/// <param name="Lines">At least one; a line is named by its place, 1 for the first.</param>
public sealed record OrderTerms(string? Seller, string OrderedOn, string? ExpectedOn, string Currency, string Sending, IReadOnlyList<OrderLine> Lines)
{
    /// <summary>What the seller calls the order.</summary>
    public string? Reference { get; init; }

    public string? Note { get; init; }
}

/// <summary>Pieces of one part that were ordered together.</summary>
/// <param name="Part">Id of the part; of a kit or assembly the set.</param>
/// <param name="Name">As the part was named on the day.</param>
/// <param name="Pieces">All of them, whatever the packs.</param>
/// <param name="Price">Of all pieces.</param>
/// <param name="Import">Charges at a border for all pieces; 0 where there are none.</param>
/// <param name="IsNew">Was it sold as new?</param>
public sealed record OrderLine(string Part, string Name, int Pieces, string Price, string Import, bool IsNew)
{
    /// <summary>As <c>book/offer</c>; null where there was none in the base.</summary>
    public string? Offer { get; init; }

    public string? NumberAsWritten { get; init; }

    /// <summary>For all pieces, besides the price: it comes back when old parts are sent in. Null where none is asked.</summary>
    public string? Deposit { get; init; }

    /// <summary>Positions that it was bought for.</summary>
    public IReadOnlyList<string> For { get; init; } = [];

    /// <summary>On what terms it goes back; null where nothing was said.</summary>
    public OfferReturns? Returns { get; init; }
}

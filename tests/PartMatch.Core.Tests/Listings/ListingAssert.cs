using System.Text;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>Reads a listing and takes its reading apart.</summary>
internal static class ListingAssert
{
    /// <summary>Generous: what is over it hangs. No assertion of speed.</summary>
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(60);

    public static ReadListing Page(string html) => Read(ListingFormat.Html, Encoding.UTF8.GetBytes(html));

    public static ReadListing Text(string text) => Read(ListingFormat.Text, Encoding.UTF8.GetBytes(text));

    public static ReadListing Read(ListingFormat format, byte[] bytes, string? charset = null) =>
        Assert.IsType<ListingReading.Read>(ListingReader.Read(new(format, bytes, charset), ListingBounds.Usual)).Listing;

    public static ListingReading.Unreadable Refused(ListingFormat format, byte[] bytes, ListingBounds? bounds = null) =>
        Assert.IsType<ListingReading.Unreadable>(ListingReader.Read(new(format, bytes), bounds ?? ListingBounds.Usual));

    /// <summary>JSON-LD on a page that has nothing else.</summary>
    public static ReadListing JsonLd(string json) => Page($"<!doctype html><title>t</title><script type=\"application/ld+json\">{json}</script>");

    /// <summary>The only offer of the only product.</summary>
    public static ReadOffer Offer(ReadListing listing) => Assert.Single(Assert.Single(listing.Products).Offers);

    public static void Money(string amount, string currency, ReadPrice? price) =>
        Assert.Equal(new Money(amount, currency), Assert.IsType<ReadPrice.Stated>(price).Money);

    /// <summary>Every reading as "amount currency", in their order.</summary>
    public static string[] Readings(ReadPrice? price) => [.. Assert.IsType<ReadPrice.Ambiguous>(price)
        .Readings.Select(money => $"{money.Amount} {money.Currency}".Trim())];

    public static Task<ListingReading> InTime(ListingFormat format, string text, ListingBounds? bounds = null) =>
        InTime(format, Encoding.UTF8.GetBytes(text), bounds);

    public static Task<ListingReading> InTime(ListingFormat format, byte[] bytes, ListingBounds? bounds = null) =>
        Task.Run(() => ListingReader.Read(new(format, bytes), bounds ?? ListingBounds.Usual)).WaitAsync(_patience, TestContext.Current.CancellationToken);
}

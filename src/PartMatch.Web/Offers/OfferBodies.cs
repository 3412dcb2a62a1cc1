using System.ComponentModel;
using System.Globalization;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Buying;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Offers;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Offers;

public sealed record OfferStoreRequest(
    [property: FromQuery(Name = "book"), System.ComponentModel.DataAnnotations.Required,
        Description("The book that shall hold the offer: that of the family it is for.")] string? Book,
    [property: FromQuery(Name = "dry-run"), Description("true to report what would happen and store nothing; false when left out.")] string? DryRun,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    internal OfferStoreAsked ToAsked() => new(Book ?? "", DryRun == "true", Who, Why);
}

internal sealed class OfferStoreRules : AbstractValidator<OfferStoreRequest>
{
    public OfferStoreRules()
    {
        RuleFor(request => request.Book).MustBeGiven("the name of a book of the base", "the books are listed at /api/books");
        RuleFor(request => request.DryRun).Must(dryRun => dryRun is null or "true" or "false").Otherwise("true or false",
            "leave dry-run out to store the offer");
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

/// <summary>An offer, the words it was read from, and its seller where nobody has recorded it yet.</summary>
/// <param name="Offer">Cells of <c>offers.csv</c> by column, all of them texts, without offer and listing, which the server gives. Without seenOn it was seen today (UTC).</param>
/// <param name="NewSeller">Cells of <c>sellers.csv</c> by column; stored with the offer.</param>
public sealed record OfferBody(IReadOnlyDictionary<string, string> Offer, ListingBody? Listing = null, IReadOnlyDictionary<string, string>? NewSeller = null)
{
    private static readonly string[] _given = ["offer", "listing"];

    /// <summary>What is wrong with its shape, before the book's own rules look at it.</summary>
    internal IReadOnlyList<FieldError> Faults() =>
    [
        .. CellFaults("offer", Offer), .. CellFaults("newSeller", NewSeller ?? new Dictionary<string, string>()),
        .. _given.Where(Offer.ContainsKey).Select(column => new FieldError($"offer.{column}", Offer[column], "no such member",
            "the server gives it: leave it out")),
        .. NewSeller is not null && Offer.TryGetValue("seller", out var code) && NewSeller.GetValueOrDefault("seller") != code
            ? [new FieldError("offer.seller", code, "the code of newSeller", "leave newSeller out where the seller is recorded")]
            : Array.Empty<FieldError>(),
    ];

    // JSON can send null where the type says text.
    private static IEnumerable<FieldError> CellFaults(string member, IReadOnlyDictionary<string, string> cells) => cells
        .Where(cell => cell.Value is not { Length: <= ChangesBodyRules.LongestCell })
        .Select(cell => new FieldError(
            $"{member}.{cell.Key}", cell.Value is null ? "null" : string.Create(CultureInfo.InvariantCulture, $"{cell.Value.Length} characters"),
            $"a text of at most {ChangesBodyRules.LongestCell} characters", "leave the member out when it is not recorded"));

    /// <summary>The cells as they go to the store, empty ones left out.</summary>
    internal Dictionary<string, string> CellsOn(DateOnly today)
    {
        var cells = Offer.Where(cell => !string.IsNullOrWhiteSpace(cell.Value)).ToDictionary(cell => cell.Key, cell => cell.Value.Trim(),
            StringComparer.Ordinal);
        cells.TryAdd("seenOn", today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        if (NewSeller?.GetValueOrDefault("seller") is { } code)
        {
            cells.TryAdd("seller", code);
        }

        return cells;
    }

    internal ListingDraft? ToListing() => Listing is { Text: { } text } && ListingText.Keep(text) is { Text.Length: > 0 } kept
        ? new ListingDraft(kept, Listing.Title is { } title ? ListingText.Keep(title).Text : null, Listing.Address is { } address
            ? ListingText.Keep(address).Text : null)
        : null;
}

/// <summary>The words of a listing.</summary>
/// <param name="Text">As a reader sees it; what is too long is cut, and the answer says so.</param>
/// <param name="Address">Of the page, as text; nothing is ever fetched from it.</param>
public sealed record ListingBody(string Text, string? Title = null, string? Address = null);

internal static class OfferProblems
{
    public static Refused Faulty(IReadOnlyList<RowFault> faults) => new(Problem.Of(
        "bad-row", [.. faults.Select(fault => FieldError.OfCell($"{PlaceOf(fault.Row)}{(fault.Column is null ? "" : "." + fault.Column)}", fault.Found,
            fault.Reason, fault.Suggestion))]));

    private static string PlaceOf(int row) => row switch
    {
        OfferEntry.SellerRow => "newSeller",
        OfferEntry.ListingRow => "listing",
        _ => "offer",
    };
}

using System.ComponentModel;
using System.Globalization;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Offers;

public sealed record OffersRequest(
    [property: FromQuery(Name = "part"), Description("A number as you have it, or maker:number; it need not be in any book.")] string? Part,
    [property: FromQuery(Name = "seller"), Description("Code of the seller.")] string? Seller,
    [property: FromQuery(Name = "family"), Description("Offers of parts that this family's books describe, and of unknown numbers in its own book.")] string? Family,
    [property: FromQuery(Name = "position"), Description("Of that family: offers of the kind of part that sits there.")] string? Position,
    [property: FromQuery(Name = "currency"), Description("ISO 4217; nothing is ever converted.")] string? Currency,
    [property: FromQuery(Name = "condition"), Description("new, refurbished, used, damaged or not-stated.")] string? Condition,
    [property: FromQuery(Name = "pieces"), Description("How many pieces the cost at the door is reckoned for; 1 when left out.")] string? Pieces,
    [property: FromQuery(Name = "on"), Description("The day to which ages are counted, YYYY-MM-DD; today (UTC) when left out.")] string? On,
    [property: FromQuery(Name = "stale-after"), Description("Days after which an offer is old, 0 to 3650; 30 when left out.")] string? StaleAfter,
    [property: FromQuery(Name = "limit"), Description("Offers per page, 1 to 200; 20 when left out.")] string? Limit,
    [property: FromQuery(Name = "cursor"), Description("From the page before; left out for the first page.")] string? Cursor)
{
    /// <param name="part">What <see cref="Part"/> names; null where it is left out, or in no book.</param>
    internal OfferQuestion ToQuestion(string? part, DateOnly today) => new(
        OfferRules.DayOf(On) ?? today, OfferRules.DaysOf(StaleAfter), OfferRules.PiecesOf(Pieces), part,
        Part is null ? null : NumberKey.Of(Parts.NamedPart.Split(Part).Number), Seller, Family, Position, Currency,
        Condition is null ? null : Codes.Find<ItemCondition>(Condition), CommonRules.PageSize(Limit), Cursor);
}

internal sealed class OffersRules : AbstractValidator<OffersRequest>
{
    public OffersRules()
    {
        RuleFor(request => request.Part).MustBeNumber().When(request => request.Part is not null);
        RuleFor(request => request.Position).Must((request, position) => position is null || request.Family is not null)
            .Otherwise("a position together with family", "positions belong to a family: add family=");
        RuleFor(request => request.Currency).MustBeCurrency();
        RuleFor(request => request.Condition).MustBeCode<OffersRequest, ItemCondition>();
        RuleFor(request => request.Pieces).MustBePieces();
        RuleFor(request => request.On).MustBeDay();
        RuleFor(request => request.StaleAfter).MustBeStaleAfter();
        RuleFor(request => request.Limit).MustBePageSize();
        RuleFor(request => request.Cursor).Must(cursor => cursor is null || OfferSearch.IsCursor(cursor))
            .Otherwise("the cursor of the page before", "leave it out for the first page");
    }
}

public sealed record OfferRequest(
    [property: FromRoute(Name = "offer"), Description("Code of the offer.")] string Offer,
    [property: FromQuery(Name = "book"), Description("The book it stands in, where several have an offer of that code.")] string? Book,
    [property: FromQuery(Name = "pieces"), Description("How many pieces the cost at the door is reckoned for; 1 when left out.")] string? Pieces,
    [property: FromQuery(Name = "on"), Description("The day to which its age is counted, YYYY-MM-DD; today (UTC) when left out.")] string? On,
    [property: FromQuery(Name = "stale-after"), Description("Days after which an offer is old, 0 to 3650; 30 when left out.")] string? StaleAfter);

internal sealed class OfferShowRules : AbstractValidator<OfferRequest>
{
    public OfferShowRules()
    {
        RuleFor(request => request.Pieces).MustBePieces();
        RuleFor(request => request.On).MustBeDay();
        RuleFor(request => request.StaleAfter).MustBeStaleAfter();
    }
}

public sealed record PricesRequest(
    [property: FromRoute(Name = "number"), Description("The number as you have it, percent-encoded; separators and case do not matter. Also maker:number.")] string Number,
    [property: FromQuery(Name = "maker"), Description("Only numbers of this maker.")] string? Maker)
{
    internal string Written => NumberInPath.Decode(Number);
}

internal sealed class PricesRules : AbstractValidator<PricesRequest>
{
    public PricesRules() => RuleFor(request => request.Written).MustBeNumber().OverridePropertyName("number");
}

public sealed record PricePlotRequest(
    [property: FromQuery(Name = "number"), System.ComponentModel.DataAnnotations.Required,
        Description("The number as you have it, or maker:number.")] string? Number,
    [property: FromQuery(Name = "maker"), Description("Only numbers of this maker.")] string? Maker,
    [property: FromQuery(Name = "currency"), Description("Which prices are drawn; those of most offers when left out.")] string? Currency,
    [property: FromQuery(Name = "on"), Description("The day to which the axis runs, YYYY-MM-DD; today (UTC) when left out.")] string? On);

internal sealed class PricePlotRules : AbstractValidator<PricePlotRequest>
{
    public PricePlotRules()
    {
        RuleFor(request => request.Number).MustBeNumber();
        RuleFor(request => request.Currency).MustBeCurrency();
        RuleFor(request => request.On).MustBeDay();
    }
}

internal static class OfferRules
{
    public static IRuleBuilderOptions<T, string?> MustBeDay<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(day => day is null || DayOf(day) is not null).Otherwise("a day as YYYY-MM-DD", "leave it out for today");

    public static IRuleBuilderOptions<T, string?> MustBePieces<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(pieces => pieces is null || CommonRules.FindWhole(pieces) is >= 1 and <= OfferBounds.MostPieces)
        .Otherwise($"a whole number from 1 to {OfferBounds.MostPieces}", "leave it out for one piece");

    public static IRuleBuilderOptions<T, string?> MustBeStaleAfter<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(days => days is null || CommonRules.FindWhole(days) is >= 0 and <= OfferBounds.MostStaleAfterDays)
        .Otherwise($"days, a whole number from 0 to {OfferBounds.MostStaleAfterDays}", $"leave it out for {OfferBounds.StaleAfterDays}");

    public static IRuleBuilderOptions<T, string?> MustBeCurrency<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(code => code is null || Currencies.FindDigits(code) is not null).Otherwise("an ISO 4217 code such as EUR", "three capital letters");

    public static DateOnly? DayOf(string? text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    public static int PiecesOf(string? text) => (int?)CommonRules.FindWhole(text) ?? 1;

    public static int DaysOf(string? text) => (int?)CommonRules.FindWhole(text) ?? OfferBounds.StaleAfterDays;

    public static DateOnly Today(this TimeProvider time) => DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime);
}

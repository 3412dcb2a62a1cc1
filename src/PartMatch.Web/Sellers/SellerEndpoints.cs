using System.ComponentModel;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Buying;
using PartMatch.Core.Families;
using PartMatch.Storage.Offers;
using PartMatch.Web.Http;

namespace PartMatch.Web.Sellers;

internal static class SellerEndpoints
{
    public static void MapSellers(this RouteGroupBuilder api)
    {
        api.MapGet("/sellers", List).WithName("ListSellers").WithTags("sellers")
            .WithSummary("Who sells, on what terms, how many of their offers are recorded, and how often they sent the wrong thing");
        api.MapGet("/sellers/{seller}", Show).WithName("ShowSeller").WithTags("sellers").WithSummary("One seller");
    }

    private static Ok<SellersAnswer> List(OfferStore offers) =>
        TypedResults.Ok(new SellersAnswer(new NothingAsked(), SellerShown.All(offers.Facts()), "/api/sellers"));

    private static Results<Ok<SellerAnswer>, Refused, Absent> Show([AsParameters] SellerRequest request, OfferStore offers)
    {
        SellerShown[] found =
        [
            .. SellerShown.All(offers.Facts()).Where(seller => seller.Terms.Code == request.Seller && (request.Book is null
                || seller.Terms.Book == request.Book)),
        ];
        return found switch
        {
            [] => new Absent(new FieldError("seller", request.Seller, "the code of a seller", "they are listed at /api/sellers")),
            [var one] => TypedResults.Ok(new SellerAnswer(new SellerAsked(request.Seller, request.Book), one, one.Link)),
            _ => new Refused(Problem.Of("bad-question", [.. found.Select(one => new FieldError(
                "book", "nothing", $"{one.Terms.Book} ({one.Terms.Name})", $"several books have a seller of that code: ask with book={one.Terms.Book}"))])),
        };
    }
}

public sealed record SellerRequest(
    [property: FromRoute(Name = "seller"), Description("Code of the seller.")] string Seller,
    [property: FromQuery(Name = "book"), Description("The book it stands in, where several have a seller of that code.")] string? Book);

/// <param name="Sellers">In ordinal order of code, then book.</param>
public sealed record SellersAnswer(NothingAsked Asked, IReadOnlyList<SellerShown> Sellers, string Permalink);

public sealed record SellerAnswer(SellerAsked Asked, SellerShown Seller, string Permalink);

public sealed record SellerAsked(string Seller, string? Book);

using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Storage.Families;
using PartMatch.Web.Families;
using PartMatch.Web.Http;

namespace PartMatch.Web.Listings;

internal static class ListingEndpoints
{
    /// <summary>Where listings are read.</summary>
    public const string Address = "/api/listings/read";

    public static void MapListings(this RouteGroupBuilder api)
    {
        var read = api.MapPost("/listings/read", Read).WithName("ReadListing").WithTags("listings")
            .WithSummary("Is what this listing sells the part that is needed? Stores nothing, fetches nothing")
            .Accepts<PastedListing>(ListingBody.Json, [.. ListingBody.Types.Where(type => type != ListingBody.Json)])
            .WithMetadata(new RequestSizeLimitAttribute(ListingBounds.Usual.MaxBytes));
        ProblemAnswer.Describe(read, StatusCodes.Status403Forbidden, StatusCodes.Status413PayloadTooLarge);
    }

    private static async Task<Results<Ok<ListingAnswer>, Refused, Absent, WrongMediaType>> Read(
        [AsParameters] ListingRequest request, HttpRequest sent, ListingSource source, FamilyStore families, CancellationToken cancellation)
    {
        var (place, absent) = FindPlace(request, families);
        if (absent is not null)
        {
            return absent;
        }

        var (document, problem) = await ListingBody.ReadAsync(sent, cancellation);
        return document is null
            ? problem is { Status: StatusCodes.Status415UnsupportedMediaType } ? new WrongMediaType(problem) : new Refused(problem ?? Problem.Of("bad-request"))
            : ListingReader.Read(document, ListingBounds.Usual) switch
            {
                ListingReading.Read read => TypedResults.Ok(Decide(source, new ListingQuestion(place, request.Needed), document, read.Listing)),
                ListingReading.Unreadable unreadable => new Refused(Problem.Of("unreadable-listing", new FieldError("listing", unreadable.Found, unreadable.Expected, unreadable.Mend))),
                var other => throw new InvalidOperationException($"A listing was read as {other.GetType().Name}, which no answer names."),
            };
    }

    /// <summary>The place asked about, null where none is; or what of it the base does not hold.</summary>
    private static (NeededPlace? Place, Absent? Absent) FindPlace(ListingRequest request, FamilyStore families)
    {
        if (!request.NamesPlace)
        {
            return (null, null);
        }

        if (families.FindFamily(request.Family ?? "") is not { } family)
        {
            return (null, KnownNames.NoFamily(request.Family ?? "", families));
        }

        var place = request.PlaceIn(family);
        return family.FindVariant(place.Variant) is null ? (null, KnownNames.NoVariant(place.Variant, family))
            : family.FindPosition(place.Position) is null ? (null, KnownNames.NoPosition(place.Position, family))
            : (place, null);
    }

    private static ListingAnswer Decide(ListingSource source, ListingQuestion question, ListingDocument document, ReadListing listing)
    {
        var (facts, finder) = source.Get();
        var answer = ListingMatch.Decide(facts, question, listing, finder.Find(listing.Passages));
        return answer with
        {
            Permalink = LinkTo(answer.Asked),
            Asked = answer.Asked with { Format = document.Format, Bytes = document.Bytes.Length, Sha256 = Convert.ToHexStringLower(SHA256.HashData(document.Bytes.Span)) },
        };
    }

    private static string LinkTo(ListingAsked asked) => new Permalink(Address)
        .With("family", asked.Family).With("variant", asked.Variant).With("position", asked.Position).With("built", asked.Built).With("serial", asked.Serial)
        .With("level", asked.Level is { } level ? Codes.Of(level) : null).ToString();
}

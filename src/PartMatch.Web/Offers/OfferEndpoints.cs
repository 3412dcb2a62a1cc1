using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Families;
using PartMatch.Storage.Offers;
using PartMatch.Storage.Parts;
using PartMatch.Web.Editing;
using PartMatch.Web.Families;
using PartMatch.Web.Host;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Offers;

internal static class OfferEndpoints
{
    /// <summary>A listing's text at its longest, in escapes, and the cells beside it.</summary>
    private const int MaxBodyBytes = 1 << 20;

    public static void MapOffers(this RouteGroupBuilder api)
    {
        api.MapGet("/offers", List).WithName("ListOffers").WithTags("offers")
            .WithSummary("What is for sale, what it costs at the door, and how old the offer is");
        api.MapGet("/offers/{offer}", Show).WithName("ShowOffer").WithTags("offers").WithSummary("One offer, with the words of the listing it was read from");
        var store = api.MapPost("/offers", Store).WithName("StoreOffer").WithTags("offers")
            .WithSummary("Stores an offer with its listing and, where it is new, its seller, as one change; recognises an offer that is stored already")
            .WithMetadata(new RequestSizeLimitAttribute(MaxBodyBytes));
        ProblemAnswer.Describe(
            store, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden, StatusCodes.Status413PayloadTooLarge,
                StatusCodes.Status415UnsupportedMediaType);
    }

    private static Results<Ok<OffersAnswer>, Refused, Absent> List(
        [AsParameters] OffersRequest request, OfferStore offers, FamilyStore families, PartStore parts, ServerSettings settings, TimeProvider time)
    {
        var part = request.Part is null ? null : NamedPart.Find(request.Part, null, parts);
        if (part is { IsAmbiguous: true })
        {
            return new Refused(part.ToProblem("part"));
        }

        var question = request.ToQuestion(part?.Part?.Id, time.Today());
        var family = question.Family is null ? null : families.FindFamily(question.Family);
        if (question.Family is not null && family is null)
        {
            return KnownNames.NoFamily(question.Family, families);
        }

        return question.Position is { } position && family is not null && family.FindPosition(position) is null
            ? KnownNames.NoPosition(position, family)
            : TypedResults.Ok(Answer(question, OfferSearch.Decide(offers.Facts() with { Home = settings.Country }, family, question), request.Part));
    }

    private static OffersAnswer Answer(OfferQuestion question, OfferPage page, string? written) => new(
        new OffersAsked(
            question.Part ?? written, question.NumberKey, question.Seller, question.Family, question.Position, question.Currency, question.Condition,
                question.Pieces,
            question.On, question.StaleAfter, question.Limit, question.Cursor),
        page.Total, page.Old, page.Cursor, page.Offers,
        OfferLinks.To(question.On, question.StaleAfter, question.Pieces, new Permalink("/api/offers").With("part", question.Part ?? written)
            .With("seller", question.Seller).With("family", question.Family).With("position", question.Position).With("currency", question.Currency)
            .With("condition", question.Condition is { } condition ? Codes.Of(condition) : null))
            .With("limit", question.Limit).With("cursor", question.Cursor).ToString());

    private static Results<Ok<OfferAnswer>, Refused, Absent> Show(
        [AsParameters] OfferRequest request, OfferStore offers, ServerSettings settings, TimeProvider time)
    {
        var facts = offers.Facts() with { Home = settings.Country };
        Offer[] found = [.. facts.Offers.Where(offer => offer.Code == request.Offer && (request.Book is null || offer.Book == request.Book))];
        if (found is not [var one])
        {
            return found.Length == 0
                ? new Absent(new FieldError("offer", request.Offer, "the code of an offer", "they are listed at /api/offers"))
                : new Refused(Problem.Of("bad-question", [.. found.Select(offer => new FieldError(
                    "book", "nothing", offer.Book, $"several books have an offer of that code: ask with book={offer.Book}"))]));
        }

        var asked = new OfferAsked(
            request.Offer, request.Book, OfferRules.PiecesOf(request.Pieces), OfferRules.DayOf(request.On) ?? time.Today(),
                OfferRules.DaysOf(request.StaleAfter));
        var shown = OfferSearch.Show(facts, one, asked.On, asked.StaleAfter, asked.Pieces) with
        {
            Kept = one.Listing is { } listing ? offers.FindListing(one.Book, listing) : null,
        };
        var link = OfferLinks.To(asked.On, asked.StaleAfter, asked.Pieces, Permalink.To("/api/offers", one.Code).With("book", one.Book));
        return TypedResults.Ok(new OfferAnswer(asked, shown, link.ToString()));
    }

    private static Results<Ok<OfferStored>, Created<OfferStored>, Refused, Absent, Clash> Store(
        [AsParameters] OfferStoreRequest request, [FromBody] OfferBody body, OfferEntry entry, OfferStore offers, LookAlikeSource source, ServerSettings settings, TimeProvider time,
        CancellationToken cancellation)
    {
        var asked = request.ToAsked();
        if (body.Faults() is { Count: > 0 } faults)
        {
            return new Refused(Problem.Of("bad-row", faults));
        }

        if (entry.FindScope(asked.Book) is not { } scope)
        {
            return EditProblems.NoBook(asked.Book);
        }

        var cells = body.CellsOn(time.Today());
        var number = cells.GetValueOrDefault("numberAsWritten") is { } written && CommonRules.IsNumber(written)
            ? new SoldNumbers(source.Get(), scope.Parts).Judge(written) : null;
        if (number?.Recorded is { } part)
        {
            cells.TryAdd("part", part);
        }

        var listing = body.ToListing();
        return entry.Store(asked.Book, [new OfferDraft(cells)], listing, body.NewSeller, NoteRules.Note(asked.Who, asked.Why), asked.DryRun,
            cancellation) switch
        {
            OfferOutcome.Done { Offers: [var taken] } done => Stored(asked, done, taken, number, listing?.Text.IsCut is true,
                offers.Facts() with { Home = settings.Country }, time.Today()),
            OfferOutcome.Faulty faulty => OfferProblems.Faulty(faulty.Faults),
            OfferOutcome.InUse inUse => EditProblems.InUse(inUse.Users, inUse.Total, "mend those rows first"),
            var other => throw new InvalidOperationException($"Storing an offer ended as {other.GetType().Name}, which no answer names."),
        };
    }

    private static Results<Ok<OfferStored>, Created<OfferStored>, Refused, Absent, Clash> Stored(
        OfferStoreAsked asked, OfferOutcome.Done done, OfferTaken taken, SoldNumber? number, bool isCut, BuyingFacts facts, DateOnly today)
    {
        var shown = facts.Offers.FirstOrDefault(offer => offer.Book == taken.Book && offer.Code == taken.Code) is { } offer && (!taken.IsNew || !asked.DryRun)
            ? OfferSearch.Show(facts, offer, today, OfferBounds.StaleAfterDays, 1) : null;
        var result = !taken.IsNew ? OfferResult.AlreadyStored : asked.DryRun ? OfferResult.WouldStore : OfferResult.Stored;
        var answer = new OfferStored(asked, result, done.Change, shown, number, taken.Earlier, isCut, shown?.Link ?? "/api/offers");
        return result == OfferResult.Stored ? TypedResults.Created(answer.Permalink, answer) : TypedResults.Ok(answer);
    }
}

internal static class OfferLinks
{
    /// <summary>With the day, because tomorrow the same question has another answer.</summary>
    public static Permalink To(DateOnly on, int staleAfter, int pieces, Permalink link) => link
        .With("pieces", pieces).With("on", on.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)).With("stale-after", staleAfter);
}

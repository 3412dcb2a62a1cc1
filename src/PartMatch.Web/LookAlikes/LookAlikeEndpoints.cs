using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Core.LookAlikes;
using PartMatch.Storage.Families;
using PartMatch.Storage.LookAlikes;
using PartMatch.Web.Families;
using PartMatch.Web.Http;

namespace PartMatch.Web.LookAlikes;

internal static class LookAlikeEndpoints
{
    public static void MapLookAlikes(this RouteGroupBuilder api)
    {
        api.MapGet("/numbers/{number}/look-alikes", LookAlikes).WithName("FindLookAlikes").WithTags("look-alikes")
            .WithSummary("What a number, or the part behind it, can be mistaken for, how dangerous that is, and how to tell them apart");
        api.MapGet("/look-alikes", Pairs).WithName("RankLookAlikes").WithTags("look-alikes")
            .WithSummary("Which two parts of a family are most dangerously mixed up, and which of them nobody has judged yet");
        api.MapGet("/numbers/{number}/near", Near).WithName("FindNearNumbers").WithTags("look-alikes")
            .WithSummary("Numbers that are written nearly the same: edits and cost, nothing else");
        api.MapGet("/books/{book}/near-pairs", Unjudged).WithName("FindUnjudgedPairs").WithTags("look-alikes")
            .WithSummary("Near numbers of a book that nobody has judged, the likeliest mix-up first; as JSON lines with the progress where they are asked for");
    }

    private static Results<Ok<PairAnswer>, Refused, Absent> Pairs([AsParameters] PairRequest request, LookAlikeSource source, FamilyStore families)
    {
        var question = request.ToQuestion();
        if (families.FindFamily(question.Family) is not { } facts)
        {
            return KnownNames.NoFamily(question.Family, families);
        }

        return question.Kind is { } kind && facts.FindKind(kind) is null
            ? KnownNames.NoKind(kind, facts)
            : TypedResults.Ok(PairRanking.Decide(source.Get(), question) with
            {
                Permalink = new Permalink("/api/look-alikes").With("family", question.Family).With("kind", question.Kind).With("danger", request.Danger)
                    .With("judgement", request.Judgement).With("limit", question.Limit).With("cursor", question.Cursor).ToString(),
            });
    }

    private static Results<Ok<LookAlikeAnswer>, Absent> LookAlikes([AsParameters] LookAlikeRequest request, LookAlikeSource source, FamilyStore families)
    {
        var question = request.ToQuestion();
        if (question.Family is { } family && families.FindFamily(family) is null)
        {
            return KnownNames.NoFamily(family, families);
        }

        var facts = source.Get();
        var answer = LookAlikeSearch.Decide(facts, question);
        return TypedResults.Ok(answer with
        {
            SplitBy = PartIdentification.BestCheck(facts, [.. answer.Known.Select(part => part.Part)]),
            TellApart = LinkToKey(answer),
            Permalink = Permalink.To("/api/numbers", question.Number, "look-alikes").With("maker", question.Maker).With("family", question.Family)
                .With("limit", question.Limit).With("cursor", question.Cursor).ToString(),
        });
    }

    private static string? LinkToKey(LookAlikeAnswer answer)
    {
        string[] parts = [.. answer.Known.Select(part => part.Part).Take(PartIdentification.MostParts)];
        return parts.Length == 0 ? null : new Permalink("/api/tell-apart").With("parts", string.Join(',', parts)).ToString();
    }

    private static Results<UnjudgedStream, Absent> Unjudged([AsParameters] UnjudgedRequest request, NumberStore store, LookAlikeSource source) =>
        store.FindParts(request.Book) is { } parts
            ? new UnjudgedStream(
                (tell, cancellation) => UnjudgedPairs.Decide(source.Get(), parts, request.ToQuestion(), tell, cancellation) with
                {
                    Permalink = Permalink.To("/api/books", request.Book, "near-pairs").With("limit", request.ToQuestion().Limit).ToString(),
                })
            : new Absent(new FieldError("book", request.Book, "the name of a book of the base", "the books are listed at /api/books"));

    private static Ok<NearAnswer> Near([AsParameters] NearRequest request, NumberSource numbers)
    {
        var question = request.ToQuestion();
        return TypedResults.Ok(NearSearch.Decide(numbers.Near(NumberKey.Of(question.Number)), question) with
        {
            Permalink = Permalink.To("/api/numbers", question.Number, "near").With("maker", question.Maker)
                .With("limit", question.Limit).With("cursor", question.Cursor).ToString(),
        });
    }
}

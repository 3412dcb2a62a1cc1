using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Families;
using PartMatch.Storage.Items;
using PartMatch.Web.Editing;
using PartMatch.Web.Families;
using PartMatch.Web.Http;

namespace PartMatch.Web.Items;

internal static class ItemEndpoints
{
    public static void MapItems(this RouteGroupBuilder api)
    {
        api.MapGet("/items", List).WithName("ListItems").WithTags("items")
            .WithSummary("The single examples of parts that somebody has in hand, against their service limits");
        api.MapGet("/items/{family}/{item}", Show).WithName("ShowItem").WithTags("items")
            .WithSummary("One example: readings, service limits, graded parts to order, photographs");
        var promote = api.MapPost("/items/{family}/{item}/promote", Promote).WithName("PromoteReading").WithTags("items")
            .WithSummary("Makes what was read on one item a value of its number, as one measured example");
        ProblemAnswer.Describe(promote, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden);
    }

    private static Results<Ok<ItemsAnswer>, Absent> List([AsParameters] ItemsRequest request, FamilyStore families, ItemStore items)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return KnownNames.NoFamily(request.Family ?? "", families);
        }

        var briefs = items.List(facts.Family.Code).Select(item => ItemDescriber.Brief(facts, item));
        var link = new Permalink("/api/items").With("family", facts.Family.Code).ToString();
        return TypedResults.Ok(new ItemsAnswer(new ItemsAsked(facts.Family.Code), [.. briefs], link));
    }

    private static Results<Ok<ItemShown>, Absent> Show(string family, string item, FamilyStore families, ItemStore items)
    {
        if (families.FindFamily(family) is not { } facts)
        {
            return KnownNames.NoFamily(family, families);
        }

        return items.Find(family, item) is { } found
            ? TypedResults.Ok(ItemDescriber.Show(facts, found, items.Photos(family, item)))
            : NoItem(family, item);
    }

    private static Results<Ok<EditAnswer>, Refused, Absent, Clash> Promote(
        [AsParameters] PromotionRequest request, PromotionStore promotions, CancellationToken cancellation)
    {
        var asked = new EditAsked(request.Family, "values", null, request.Who, request.Why);
        var outcome = promotions.Promote(request.Family, request.Item, request.Feature ?? "", NoteRules.Note(request.Who, request.Why), cancellation);
        return outcome is not PromotionOutcome.Edited edited ? NoReading(request) : edited.Outcome switch
        {
            EditOutcome.Done done => TypedResults.Ok(
                new EditAnswer(asked, done.Change, [.. done.Rows.Select(RowNow.Of)], EditLinks.ToHistory(request.Family, null, null))),
            EditOutcome.Faulty faulty => EditProblems.Faulty(faulty.Faults, inChanges: true),
            EditOutcome.InUse inUse => EditProblems.InUse(inUse.Users, inUse.Total, "mend those rows first"),
            EditOutcome.Stale => new Clash(new FieldError(
                "feature", $"{request.Item}, {request.Feature}, which somebody has just changed", "a reading that stays as it is meanwhile",
                "look at it again, then promote it")),
            var other => throw new InvalidOperationException($"A promotion ended as {other.GetType().Name}, which no answer names."),
        };
    }

    private static Absent NoItem(string family, string item) =>
        new(new FieldError("item", item, $"the code of an item of {family}", $"they are listed at /api/items?family={family}"));

    private static Absent NoReading(PromotionRequest request) => new(new FieldError(
        "feature", $"{request.Item}, {request.Feature}", "an item of the family, and a feature that was read on it",
        $"they are listed at /api/items?family={request.Family}"));
}

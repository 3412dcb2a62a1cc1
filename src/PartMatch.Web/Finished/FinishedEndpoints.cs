using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Finished;
using PartMatch.Storage.Builds;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Families;
using PartMatch.Web.Builds;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;
using PartMatch.Web.Orders;

namespace PartMatch.Web.Finished;

/// <summary>A build that stands on the bench: its parts on one page, and what was found of them.</summary>
internal static class FinishedEndpoints
{
    private const int MaxBodyBytes = 256 << 10;

    public static void MapFinished(this RouteGroupBuilder api)
    {
        api.MapGet("/builds/{build}/parts-list", Show).WithName("ListParts").WithTags("plans")
            .WithSummary("A build on one page to share: numbers, works, what was learned");
        var record = api.MapPost("/builds/{build}/findings", Record).WithName("RecordFindings").WithTags("builds")
            .WithSummary("What fitted, what ran and for how long, of every line in one sitting: stored as findings of one source, all or nothing")
            .WithMetadata(new RequestSizeLimitAttribute(MaxBodyBytes));
        ProblemAnswer.Describe(
            record, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden, StatusCodes.Status413PayloadTooLarge,
                StatusCodes.Status415UnsupportedMediaType);
    }

    private static Task<Results<Ok<PartsList>, Refused, Absent, Clash, Busy>> Show(
        [AsParameters] PlanRequest request, PlanQuestions questions, CancellationToken gone) =>
        questions.AnswerAsync<Ok<PartsList>>(
            request.Build, request, _ => null,
            (ready, stop) => TypedResults.Ok(
                PartsLists.Of(ready.Facts, ready.Build, request.PlanOf(ready, null, stop)) with
                {
                    Permalink = request.LinkTo("parts-list", ready.Version, ready.Today).ToString(),
                }),
            gone);

    private static async Task<Results<Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale>, Busy>> Record(
        [AsParameters] BuildSittingRequest request, [FromBody] Sitting sitting, BuildStore builds, FamilyStore families, BuildNames names, PlanQuestions questions,
        BuildOrders orders, RowStore rows, EditStore edits, TimeProvider time, HttpResponse response, CancellationToken cancellation)
    {
        var (version, absent) = BuildEndpoints.Find(new BuildAsked(request.Build), builds);
        if (version?.Document is not { } build)
        {
            return Answer(absent!); // one of the two is there
        }

        if (families.FindFamily(build.Family) is not { } family)
        {
            return Answer(EditProblems.NoBook(build.Family));
        }

        if (SittingRules.Make(family, names, time.Today()).Validate(sitting) is { IsValid: false } faulty)
        {
            return Answer(new Refused(Problem.Of("bad-row", [.. faulty.Errors.Take(SittingRules.MaxErrors).Select(BuildProblems.ToError)])));
        }

        var (list, busy) = await PlannedAsync(request, questions, cancellation);
        if (busy is not null)
        {
            return busy;
        }

        return Sittings.Doubtful(orders.List(build.Code, null), list, sitting) is [_, ..] doubtful
            ? Answer(new Refused(Problem.Of("bad-row", [.. doubtful.Take(SittingRules.MaxErrors).Select(line => SittingRules.NotHere(line.Line, line.NotYet))])))
            : new RowEdit(edits, response, cancellation).MakeAll(
                new EditAsked(build.Family, null, null, request.Who, request.Why),
                SittingRows.Of(family, build, version.Saved.Version, sitting, request.Who, rows));
    }

    private static Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> Answer(
        Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> answer) => answer;

    /// <summary>What is in the build as it is planned; null where it can no longer be planned: then what was ordered is all that is known.</summary>
    private static async Task<(PartsList? List, Busy? Busy)> PlannedAsync(BuildSittingRequest request, PlanQuestions questions, CancellationToken gone)
    {
        var asked = new PlanRequest { Build = request.Build, Objective = request.Objective };
        switch (await questions.BeginAsync(request.Build, asked, gone))
        {
            case PlanReading.Full full:
                return (null, full.Answer);
            case PlanReading.NotHeld or PlanReading.Outdated:
                return (null, null);
            case PlanReading.Ready ready:
                using (ready.Turn)
                {
                    return (await ready.Turn.RunAsync(stop => PartsLists.Of(ready.Facts, ready.Build, asked.PlanOf(ready, null, stop))), null);
                }

            case var other:
                throw new InvalidOperationException($"A question about a plan was read as {other.GetType().Name}, which no answer names.");
        }
    }
}

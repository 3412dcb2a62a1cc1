using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Yard;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Donors;

internal static class YardEndpoints
{
    public static void MapYardList(this RouteGroupBuilder api) =>
        api.MapGet("/builds/{build}/yard-list", Show).WithName("ListForYard").WithTags("plans")
            .WithSummary("What a plan still needs, as one looks for it in a yard: where it sits, how it is recognised, what it can be taken for, which tools to bring");

    private static Task<Results<Ok<YardList>, Refused, Absent, Clash, Busy>> Show(
        [AsParameters] PlanRequest request, PlanQuestions questions, LookAlikeSource lookAlikes, CancellationToken gone) =>
        questions.AnswerAsync<Ok<YardList>>(
            request.Build, request, _ => null,
            (ready, stop) => TypedResults.Ok(
                YardLists.Of(ready.Facts, lookAlikes.Get(), ready.Build, request.PlanOf(ready, null, stop)) with
                {
                    Permalink = request.LinkTo("yard-list", ready.Version, ready.Today).ToString(),
                }),
            gone);
}

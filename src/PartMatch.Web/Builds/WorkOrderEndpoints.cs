using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Openings;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

/// <summary>The plan at the bench: in which order, and what is weak while it lies open.</summary>
internal static class WorkOrderEndpoints
{
    public static void MapWorkOrders(this RouteGroupBuilder api)
    {
        api.MapGet("/builds/{build}/work-order", Order).WithName("OrderWork").WithTags("plans")
            .WithSummary("In which order the engine of the plan comes apart and goes together, with torques, renewals and cautions beside each step");
        api.MapGet("/builds/{build}/weak-points", WhileOpen).WithName("FindOpenWeakPoints").WithTags("plans")
            .WithSummary("Known weak points at positions that the plan disturbs, each with what mends it and what that costs");
    }

    private static Task<Results<Ok<BuildWorkOrder>, Refused, Absent, Clash, Busy>> Order(
        [AsParameters] PlanRequest request, PlanQuestions questions, CancellationToken gone) =>
        questions.AnswerAsync<Ok<BuildWorkOrder>>(
            request.Build, request, _ => null,
            (ready, stop) => TypedResults.Ok(
                WorkOrders.Order(ready.Facts, ready.Build, ready.Version, request.Aim, ready.Today, ready.Effort, ready.Memory, stop) with
                {
                    Permalink = request.LinkTo("work-order", ready.Version, ready.Today).ToString(),
                }),
            gone);

    private static Task<Results<Ok<BuildWeakPoints>, Refused, Absent, Clash, Busy>> WhileOpen(
        [AsParameters] PlanRequest request, PlanQuestions questions, CancellationToken gone) =>
        questions.AnswerAsync<Ok<BuildWeakPoints>>(
            request.Build, request, _ => null,
            (ready, stop) => TypedResults.Ok(
                WorkOrders.WhileOpen(ready.Facts, ready.Build, ready.Version, request.Aim, ready.Today, ready.Effort, ready.Memory, stop) with
                {
                    Permalink = request.LinkTo("weak-points", ready.Version, ready.Today).ToString(),
                }),
            gone);
}

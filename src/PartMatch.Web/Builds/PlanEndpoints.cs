using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;
using PartMatch.Storage.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

internal static class PlanEndpoints
{
    public static void MapPlans(this RouteGroupBuilder api)
    {
        api.MapGet("/builds/{build}/plan", Plan).WithName("PlanBuild").WithTags("plans")
            .WithSummary("What to keep, replace, add, leave off and renew, from whom to buy it, what it costs and when it is there");
        var stop = api.MapPost("/builds/{build}/stop", Stop).WithName("StopPlans").WithTags("plans")
            .WithSummary("Stops whatever is being worked out for a build; each answers with the best it has");
        ProblemAnswer.Describe(stop, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden);
    }

    private static async Task<Results<Ok<BuildPlan>, PlanStream<PlanProgress, BuildPlan>, Absent, Clash, Busy>> Plan(
        [AsParameters] PlanRequest request, HttpRequest sent, PlanQuestions questions, CancellationToken gone)
    {
        switch (await questions.BeginAsync(request.Build, request, gone))
        {
            case PlanReading.NotHeld notHeld:
                return notHeld.Answer;
            case PlanReading.Outdated outdated:
                return outdated.Answer;
            case PlanReading.Full full:
                return full.Answer;
            case PlanReading.Ready ready:
                BuildPlan Work(Action<PlanProgress>? told, CancellationToken stop) => request.PlanOf(ready, told, stop);
                if (JsonLines.IsWanted(sent))
                {
                    return new PlanStream<PlanProgress, BuildPlan>(ready.Turn, Work);
                }

                using (ready.Turn)
                {
                    return TypedResults.Ok(await ready.Turn.RunAsync(stop => Work(null, stop)));
                }

            case var other:
                throw new InvalidOperationException($"A question about a plan was read as {other.GetType().Name}, which no answer names.");
        }
    }

    private static Results<Ok<BuildStopped>, Absent> Stop([AsParameters] StopRequest request, BuildStore builds, BuildSolves solves) =>
        builds.Find(request.Build) is null
            ? BuildProblems.NoBuild(request.Build, builds)
            : TypedResults.Ok(new BuildStopped(
                new BuildAsked(request.Build), solves.Stop(request.Build), Permalink.To("/api/builds", request.Build, "plan").ToString()));
}

/// <param name="Stopped">How many questions were being worked out.</param>
public sealed record BuildStopped(BuildAsked Asked, int Stopped, string Permalink);

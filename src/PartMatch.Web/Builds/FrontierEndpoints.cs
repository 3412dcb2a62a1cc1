using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Web.Http;
using PartMatch.Web.Plots;

namespace PartMatch.Web.Builds;

internal static class FrontierEndpoints
{
    private const string Plot = "/plots/frontier.";

    public static void MapFrontiers(this RouteGroupBuilder api)
    {
        api.MapGet("/builds/{build}/frontier", Show).WithName("WeighDays").WithTags("plans")
            .WithSummary("What each day sooner costs, and which single price, delay or unknown fit would change the cheapest plan");
        api.MapGet(Plot + PlotAnswer.Form, Draw).WithName("DrawFrontier").WithTags("plans").WithSummary("Cost over days of a build, or the numbers behind it");
    }

    private static Task<Results<Ok<BuildFrontier>, Refused, Absent, Clash, Busy>> Show(
        [AsParameters] FrontierRequest request, PlanQuestions questions, CancellationToken gone) =>
        questions.AnswerAsync<Ok<BuildFrontier>>(request.Build, request, _ => null, (ready, stop) => TypedResults.Ok(Reckon(ready, stop)), gone);

    private static Task<Results<PlotAnswer, Refused, Absent, Clash, Busy>> Draw(
        string form, [AsParameters] FrontierPlotRequest request, PlanQuestions questions, CancellationToken gone) =>
        questions.AnswerAsync<PlotAnswer>(
            request.Build ?? "", request, _ => null, (ready, stop) => new PlotAnswer(BuildPlots.Frontier(Reckon(ready, stop)), form), gone);

    private static BuildFrontier Reckon(PlanReading.Ready ready, CancellationToken stop) =>
        BuildFrontiers.ByDays(ready.Facts, ready.Build, ready.Version, ready.Today, ready.Effort, ready.Memory, stop) with
        {
            Plot = Fill(new Permalink("/api" + Plot + PlotAnswer.Svg).With("build", ready.Build.Code), ready),
            Permalink = Fill(Permalink.To("/api/builds", ready.Build.Code, "frontier").With("by", "days"), ready),
        };

    private static string Fill(Permalink link, PlanReading.Ready ready) => BuildDayRequest.Fill(link, ready.Version, ready.Today).ToString();
}

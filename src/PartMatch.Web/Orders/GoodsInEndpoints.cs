using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Builds;
using PartMatch.Core.Orders;
using PartMatch.Storage.Builds;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Orders;

/// <summary>What came, or is to come, and how it is told apart.</summary>
/// <param name="Arrivals">What is there and not looked at first, then what is wrong, then what is on the way.</param>
public sealed record GoodsInAnswer(GoodsInAsked Asked, IReadOnlyList<Arrival> Arrivals, string Permalink);

public sealed record GoodsInAsked(string Build, DateOnly On);

/// <summary>What was made of what was found.</summary>
/// <param name="Item">Where what was read is kept; absent where nothing was.</param>
/// <param name="Text">What it means, and what to do next.</param>
public sealed record GoodsInRecorded(Order Order, Arrival Arrival, string? Item, string Text, string Permalink);

internal static class GoodsInEndpoints
{
    public static void MapGoodsIn(this RouteGroupBuilder api)
    {
        api.MapGet("/builds/{build}/goods-in", List).WithName("ShowGoodsIn").WithTags("orders")
            .WithSummary("What came and is to come: how each is told apart from what can be taken for it, and what to measure on it");
        OrderEndpoints.Write<GoodsInRecord>(api.MapPost("/builds/{build}/goods-in", Record).WithName("RecordGoodsIn")
            .WithSummary("Tells what was found of what came: right, or wrong and what came instead; what was read is kept"));
        api.MapGet("/builds/{build}/look-alikes", LookAlikes).WithName("RankBuildLookAlikes").WithTags("orders")
            .WithSummary("The pairs of parts that endanger what the build has bought or is to buy: what came wrong first, then the worst");
    }

    private static Results<Ok<GoodsInAnswer>, Absent, Clash> List(
        [AsParameters] GoodsInRequest request, BuildStore builds, BuildSource source, BuildOrders orders, LookAlikeSource lookAlikes, TimeProvider time)
    {
        var (version, absent) = BuildEndpoints.Find(new BuildAsked(request.Build), builds);
        if (version?.Document is not { } build)
        {
            return absent!; // one of the two is there
        }

        var on = request.Day ?? time.Today();
        return source.Find(build.Family) is not { } grounds ? new Clash(Problem.Of("build-outdated"))
            : TypedResults.Ok(new GoodsInAnswer(
                new GoodsInAsked(build.Code, on), GoodsIn.Of(grounds.Facts, lookAlikes.Get(), orders.List(build.Code, request.Day), on),
                Core.Catalogue.Permalink.To("/api/builds", build.Code, "goods-in").With("on", request.On).ToString()));
    }

    private static async Task<Results<Ok<GoodsInRecorded>, Refused, Absent, Clash, Stale, WrongMediaType>> Record(
        [AsParameters] GoodsInRecordRequest request, HttpRequest sent, BuildStore builds, GoodsInRecording recording, HttpResponse response, CancellationToken cancellation)
    {
        var (version, absent) = BuildEndpoints.Find(new BuildAsked(request.Build), builds);
        if (version?.Document is not { } build)
        {
            return absent!; // one of the two is there
        }

        if (request.IfMatch is null)
        {
            return OrderProblems.VersionNeeded();
        }

        var (record, problem) = await OrderBody.ReadAsync<GoodsInRecord>(sent, cancellation);
        if (record is null)
        {
            return problem is { Status: StatusCodes.Status415UnsupportedMediaType } ? new WrongMediaType(problem) : new Refused(problem!); // one of the two is there
        }

        var (recorded, refusal) = recording.Record(build, record, request.Seen, request.Note, cancellation);
        if (recorded is not null)
        {
            response.Headers.ETag = OrderEndpoints.TagOf(recorded.Order);
            return TypedResults.Ok(recorded);
        }

        return refusal switch
        {
            Refused refused => refused,
            Absent none => none,
            Stale stale => stale,
            Clash clash => clash,
            var other => throw new InvalidOperationException($"Goods in were recorded as {other?.GetType().Name}, which no answer names."),
        };
    }

    private static Task<Results<Ok<BuildLookAlikes>, Refused, Absent, Clash, Busy>> LookAlikes(
        [AsParameters] BuildLookAlikesRequest request, PlanQuestions questions, LookAlikeSource lookAlikes, BuildOrders orders, CancellationToken gone) =>
        questions.AnswerAsync<Ok<BuildLookAlikes>>(request.Build, request, _ => null, (ready, stop) =>
        {
            var plan = BuildPlanner.Plan(ready.Facts, ready.Build, ready.Version, request.Aim, ready.Today, ready.Effort, ready.Memory, null, stop);
            return TypedResults.Ok(BuildLookAlikes.Of(lookAlikes.Get(), ready.Build.Family, plan, request.Least, orders.List(ready.Build.Code, request.Day)) with
            {
                Permalink = request.LinkTo("look-alikes", ready.Version, ready.Today).With("danger", request.Danger).ToString(),
            });
        }, gone);
}

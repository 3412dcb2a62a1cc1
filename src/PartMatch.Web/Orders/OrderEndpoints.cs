using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Builds;
using PartMatch.Core.Orders;
using PartMatch.Storage.Builds;
using PartMatch.Storage.Orders;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Orders;

internal static class OrderEndpoints
{
    public static void MapOrders(this RouteGroupBuilder api)
    {
        api.MapGet("/builds/{build}/orders", List).WithName("ListOrders").WithTags("orders")
            .WithSummary("What was bought for a build, how far each order has come, and the money: spent, committed and to go");
        api.MapGet("/builds/{build}/orders/{order}", Show).WithName("ShowOrder").WithTags("orders").WithSummary("One order, with everything that happened to it");
        api.MapGet("/builds/{build}/orders.csv", Shop).WithName("ExportShoppingList").WithTags("orders")
            .WithSummary("What is to be ordered, by seller, as a table for a spreadsheet").Produces(StatusCodes.Status200OK, contentType: ShoppingList.Csv);
        Write<OrderAsked>(api.MapPost("/builds/{build}/orders", Add).WithName("MakeOrder").WithSummary("Tells that something was ordered"));
        Write<OrderEvent>(api.MapPost("/builds/{build}/orders/{order}", Tell).WithName("TellOfOrder")
            .WithSummary("Tells what happened to an order: paid, arrived, checked, wrong, returned, refunded, cancelled, deposit-back, deposit-kept, charged, or that something was told by mistake"));
    }

    internal static void Write<T>(RouteHandlerBuilder route)
        where T : notnull
    {
        route.WithTags("orders").WithMetadata(new RequestSizeLimitAttribute(OrderDocument.MaxBytes)).Accepts<T>(BuildBody.Json);
        ProblemAnswer.Describe(route, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden, StatusCodes.Status413PayloadTooLarge);
    }

    private static async Task<Results<Ok<OrdersAnswer>, Refused, Absent, Clash, Busy>> List(
        [AsParameters] OrdersRequest request, PlanQuestions questions, BuildStore builds, BuildOrders orders, TimeProvider time, HttpResponse response,
        CancellationToken gone)
    {
        OrdersAnswer Answer(Build build, int version, BuildBought bought, DateOnly today, BuildPlan? plan)
        {
            var made = orders.List(build.Code, null).Count;
            response.Headers.ETag = TagOf(made);
            return new OrdersAnswer(
                new OrdersAsked(build.Code, version, request.Aim, plan is not null, today), made, orders.List(build.Code, request.Day), BuildMoney.Of(bought, plan),
                request.LinkTo("orders", version, today).With("plan", plan is null ? "no" : null).ToString());
        }

        if (request.Plan != "no")
        {
            return await questions.AnswerAsync<Ok<OrdersAnswer>>(request.Build, request, _ => null, (ready, stop) => TypedResults.Ok(
                Answer(ready.Build, ready.Version, ready.Facts.Bought, ready.Today, Plan(ready, request, stop))), gone);
        }

        var (version, absent) = BuildEndpoints.Find(new BuildAsked(request.Build, request.OfVersion), builds);
        return version?.Document is not { } document ? absent! // one of the two is there
            : orders.Find(document, request.Day) is (_, { } other) ? new Clash(Problem.Of("build-outdated", other))
            : TypedResults.Ok(Answer(document, version.Saved.Version, orders.Find(document, request.Day).Bought, request.Day ?? time.Today(), null));
    }

    private static BuildPlan Plan(PlanReading.Ready ready, PlanRequest request, CancellationToken stop) =>
        BuildPlanner.Plan(ready.Facts, ready.Build, ready.Version, request.Aim, ready.Today, ready.Effort, ready.Memory, null, stop);

    private static Results<Ok<OrderAnswer>, Absent> Show([AsParameters] OrderRequest request, OrderStore orders, HttpResponse response)
    {
        if (CommonRules.FindWhole(request.Order) is not <= int.MaxValue || orders.Find(request.Build, NumberOf(request.Order)) is not { } order)
        {
            return OrderProblems.NoOrder(request.Build, request.Order);
        }

        response.Headers.ETag = TagOf(order);
        return TypedResults.Ok(OrderAnswer.Of(order, null, null));
    }

    private static Task<Results<ContentHttpResult, Refused, Absent, Clash, Busy>> Shop(
        [AsParameters] PlanRequest request, PlanQuestions questions, BuildOrders orders, CancellationToken gone) =>
        questions.AnswerAsync<ContentHttpResult>(request.Build, request, _ => null, (ready, stop) => TypedResults.Content(
            ShoppingList.Write(Plan(ready, request, stop), orders.List(ready.Build.Code, request.Day)), ShoppingList.Csv), gone);

    private static async Task<Results<Created<OrderAnswer>, Refused, Absent, Clash, Stale, WrongMediaType>> Add(
        [AsParameters] OrderAddRequest request, HttpRequest sent, BuildStore builds, BuildSource source, OrderStore orders, TimeProvider time,
        HttpResponse response, CancellationToken cancellation)
    {
        var (version, absent) = BuildEndpoints.Find(new BuildAsked(request.Build), builds);
        if (version?.Document is not { } build)
        {
            return absent!; // one of the two is there
        }

        if (request.IfMatch is null)
        {
            return OrderProblems.OrdersVersionNeeded(build.Code);
        }

        var (asked, problem) = await OrderBody.ReadAsync<OrderAsked>(sent, cancellation);
        if (asked is null)
        {
            return problem is { Status: StatusCodes.Status415UnsupportedMediaType } ? new WrongMediaType(problem) : new Refused(problem!); // one of the two is there
        }

        if (source.Find(build.Family) is not { } grounds)
        {
            return new Clash(Problem.Of("build-outdated"));
        }

        var (terms, faults) = OrderMaking.Of(grounds.Facts, build, asked, time.Today());
        if (terms is null)
        {
            return OrderProblems.Faulty(faults);
        }

        switch (orders.Add(build.Code, terms, request.Note, request.Seen))
        {
            case OrderOutcome.Done { Now: var now }:
                response.Headers.ETag = TagOf(now);
                return TypedResults.Created(OrderLinks.To(now), OrderAnswer.Of(now, request.Who, request.Why));
            case OrderOutcome.Overtaken { Since: var since }:
                return OrderProblems.Overtaken(since, request.IfMatch);
            case var other:
                throw new InvalidOperationException($"An order was stored as {other.GetType().Name}, which no answer names.");
        }
    }

    private static async Task<Results<Ok<OrderAnswer>, Refused, Absent, Stale, WrongMediaType>> Tell(
        [AsParameters] OrderTellRequest request, HttpRequest sent, OrderStore orders, TimeProvider time, HttpResponse response, CancellationToken cancellation)
    {
        if (request.IfMatch is null)
        {
            return OrderProblems.VersionNeeded();
        }

        var (did, problem) = await OrderBody.ReadAsync<OrderEvent>(sent, cancellation);
        if (did is null)
        {
            return problem is { Status: StatusCodes.Status415UnsupportedMediaType } ? new WrongMediaType(problem) : new Refused(problem!); // one of the two is there
        }

        if (OrderEventCheck.FaultOfDay(did, time.Today()) is { } toCome)
        {
            return OrderProblems.Faulty(toCome);
        }

        if (orders.Find(request.Build, NumberOf(request.Order)) is { } present && (request.Seen is null || request.Seen == present.Version)
            && OrderEventCheck.FaultOfLook(present, did) is { } unseen)
        {
            return OrderProblems.Faulty(unseen);
        }

        switch (orders.Append(request.Build, NumberOf(request.Order), request.Seen, did, request.Note))
        {
            case OrderOutcome.Done { Now: var now }:
                response.Headers.ETag = TagOf(now);
                return TypedResults.Ok(OrderAnswer.Of(now, request.Who, request.Why));
            case OrderOutcome.Faulty { Fault: var fault }:
                return OrderProblems.Faulty(fault);
            case OrderOutcome.Stale { Present: var later }:
                return OrderProblems.Outdated(later, request.Seen);
            default:
                return OrderProblems.NoOrder(request.Build, request.Order);
        }
    }

    internal static string TagOf(Order order) => TagOf(order.Version);

    private static string TagOf(int version) => string.Create(CultureInfo.InvariantCulture, $"\"{version}\"");

    /// <summary>No order has the number 0.</summary>
    private static int NumberOf(string order) => CommonRules.FindWhole(order) is { } number and <= int.MaxValue ? (int)number : 0;
}

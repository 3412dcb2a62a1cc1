using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Editing;
using PartMatch.Web.Builds;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Orders;

/// <summary>A question about what was bought for a build.</summary>
public sealed record OrdersRequest : PlanRequest
{
    [FromQuery(Name = "plan"), Description("no to leave out what is to go, which takes a plan to know; yes when left out.")]
    public string? Plan { get; init; }
}

internal sealed class OrdersRules : PlanRules<OrdersRequest>
{
    public OrdersRules() => RuleFor(request => request.Plan).Must(plan => plan is null or "yes" or "no").Otherwise("yes or no", "leave it out for yes");
}

public sealed record OrderRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromRoute(Name = "order"), Description("Number of the order, 1 for the first.")] string Order);

public sealed record OrderAddRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromHeader(Name = "If-Match"), Description("The version of the build's orders that was seen, in quotes; * to order whatever was ordered meanwhile.")] string? IfMatch,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    // Before the first order the version is 0: what cannot be read is one that there never is.
    internal int? Seen => IfMatch?.Trim() is "*" or null ? null : CommonRules.FindWhole(IfMatch.Trim().Trim('"')) is { } version and <= int.MaxValue ? (int)version : -1;

    internal ChangeNote Note => NoteRules.Note(Who, Why);
}

internal sealed class OrderAddRules : AbstractValidator<OrderAddRequest>
{
    public OrderAddRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

public sealed record OrderTellRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromRoute(Name = "order"), Description("Number of the order, 1 for the first.")] string Order,
    [property: FromHeader(Name = "If-Match"), Description("The version that was seen, in quotes; * to tell it whatever happened meanwhile.")] string? IfMatch,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    internal int? Seen => BuildRules.SeenIn(IfMatch);

    internal ChangeNote Note => NoteRules.Note(Who, Why);
}

internal sealed class OrderTellRules : AbstractValidator<OrderTellRequest>
{
    public OrderTellRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

public sealed record GoodsInRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromQuery(Name = "on"), Description("The day on which it is looked at, YYYY-MM-DD; today (UTC) when left out.")] string? On)
{
    internal DateOnly? Day => OfferRules.DayOf(On);
}

internal sealed class GoodsInRules : AbstractValidator<GoodsInRequest>
{
    public GoodsInRules() => RuleFor(request => request.On).MustBeDay();
}

public sealed record GoodsInRecordRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromHeader(Name = "If-Match"), Description("The version of the order that was seen, in quotes; * to tell it whatever happened meanwhile.")] string? IfMatch,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    internal int? Seen => BuildRules.SeenIn(IfMatch);

    internal ChangeNote Note => NoteRules.Note(Who, Why);
}

internal sealed class GoodsInRecordRules : AbstractValidator<GoodsInRecordRequest>
{
    public GoodsInRecordRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

public sealed record BuildLookAlikesRequest : PlanRequest
{
    [FromQuery(Name = "danger"), Description("The least danger that is listed: high, medium or low; medium when left out.")]
    public string? Danger { get; init; }

    internal Core.LookAlikes.DangerLevel Least => Danger is null ? Core.LookAlikes.DangerLevel.Medium : Codes.Get<Core.LookAlikes.DangerLevel>(Danger);
}

internal sealed class BuildLookAlikesRules : PlanRules<BuildLookAlikesRequest>
{
    public BuildLookAlikesRules() => RuleFor(request => request.Danger).Must(danger => danger is null or "high" or "medium" or "low")
        .Otherwise("high, medium or low", "leave it out for medium");
}

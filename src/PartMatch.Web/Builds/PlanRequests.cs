using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Globalization;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Builds;

/// <summary>A question about one version of a build on one day.</summary>
public abstract record BuildDayRequest
{
    [FromQuery(Name = "version"), Description("An earlier version of the build; the present one when left out.")]
    public string? Version { get; init; }

    [FromQuery(Name = "on"), Description("The day of the question, YYYY-MM-DD, on which is ordered where the build says no day; today (UTC) when left out.")]
    public string? On { get; init; }

    internal int? OfVersion => BuildRules.VersionOf(Version);

    internal DateOnly? Day => OfferRules.DayOf(On);

    /// <summary>The donor that stands in the place of the build's own; null: its own.</summary>
    internal virtual string? OtherDonor => null;

    /// <summary>Adds what was left out: tomorrow, or of a later version, the same question has another answer.</summary>
    internal static Permalink Fill(Permalink link, int version, DateOnly today) =>
        link.With("version", version).With("on", today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
}

/// <summary>A question about the plan of a build.</summary>
public record PlanRequest : BuildDayRequest
{
    [FromRoute(Name = "build"), Description("Code of the build.")]
    public string Build { get; init; } = "";

    [FromQuery(Name = "objective"), Description("What counts first: cheapest, soonest, surest or most-kept; cheapest when left out.")]
    public string? Objective { get; init; }

    [FromQuery(Name = "donor"), Description("Code of a donor of the build's list, to be planned from instead of the donor it has.")]
    public string? Donor { get; init; }

    internal override string? OtherDonor => Donor;

    internal PlanObjective Aim => Objective is null ? PlanObjective.Cheapest : Codes.Get<PlanObjective>(Objective);

    /// <summary>The address that asks this again.</summary>
    internal Permalink LinkTo(string question, int version, DateOnly today) =>
        Fill(Permalink.To("/api/builds", Build, question).With("objective", Codes.Of(Aim)).With("donor", Donor), version, today);

    internal BuildPlan PlanOf(PlanReading.Ready ready, Action<PlanProgress>? told, CancellationToken stop)
    {
        var plan = BuildPlanner.Plan(ready.Facts, ready.Build, ready.Version, Aim, ready.Today, ready.Effort, ready.Memory, told, stop);
        return plan with { Asked = AskedOf(plan.Asked), Permalink = LinkTo("plan", ready.Version, ready.Today).ToString() };
    }

    /// <summary>The question as the answer repeats it.</summary>
    internal PlanAsked AskedOf(PlanAsked asked) => asked with { Donor = Donor };
}

public sealed record WhyRequest : PlanRequest
{
    [FromQuery(Name = "line"), Required, Description("Position of the line.")]
    public string? Line { get; init; }
}

public sealed record WhyNotRequest : PlanRequest
{
    [FromQuery(Name = "position"), Required, Description("Where.")]
    public string? Position { get; init; }

    [FromQuery(Name = "part"), Required, Description("The part that is forced there, as its number or maker:number; none to leave the position empty.")]
    public string? Part { get; init; }
}

public sealed record FrontierRequest : BuildDayRequest
{
    [FromRoute(Name = "build"), Description("Code of the build.")]
    public string Build { get; init; } = "";

    [FromQuery(Name = "by"), Description("What is weighed against cost: days; days when left out.")]
    public string? By { get; init; }
}

public sealed record FrontierPlotRequest : BuildDayRequest
{
    [FromQuery(Name = "build"), Required, Description("Code of the build.")]
    public string? Build { get; init; }
}

public sealed record StopRequest([property: FromRoute(Name = "build"), Description("Code of the build.")] string Build);

internal abstract class BuildDayRules<T> : AbstractValidator<T>
    where T : BuildDayRequest
{
    protected BuildDayRules()
    {
        RuleFor(request => request.Version).MustBeVersion();
        RuleFor(request => request.On).MustBeDay();
        RuleFor(request => request.On).Must(on => OfferRules.DayOf(on) is not { } day || BuildDocumentRules.IsPlannable(day))
            .Otherwise(BuildDocumentRules.DayExpected, "leave it out for today");
    }
}

internal abstract class PlanRules<T> : BuildDayRules<T>
    where T : PlanRequest
{
    protected PlanRules() => RuleFor(request => request.Objective).Must(objective => objective is null || Codes.Find<PlanObjective>(objective) is not null)
        .Otherwise($"one of {string.Join(", ", Codes.All<PlanObjective>())}", "leave it out for the cheapest");
}

internal sealed class PlanRequestRules : PlanRules<PlanRequest>;

internal sealed class WhyRules : PlanRules<WhyRequest>
{
    public WhyRules() => RuleFor(request => request.Line).MustBeGiven("the position of a line of the plan", "the lines stand in the plan");
}

internal sealed class WhyNotRules : PlanRules<WhyNotRequest>
{
    public WhyNotRules()
    {
        RuleFor(request => request.Position).MustBeGiven("the code of a position", "the positions are listed with their family");
        RuleFor(request => request.Part).MustBeNumber();
    }
}

internal sealed class FrontierRules : BuildDayRules<FrontierRequest>
{
    public FrontierRules() => RuleFor(request => request.By).Must(by => by is null or "days").Otherwise("days", "leave it out: it is what there is");
}

internal sealed class FrontierPlotRules : BuildDayRules<FrontierPlotRequest>
{
    public FrontierPlotRules() => RuleFor(request => request.Build).MustBeGiven("the code of a build", "the builds are listed at /api/builds");
}

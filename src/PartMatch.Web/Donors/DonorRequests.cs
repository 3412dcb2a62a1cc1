using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Donors;

/// <summary>Which donor of a build is the one to drive to?</summary>
public sealed record DonorsRequest : BuildDayRequest
{
    [FromQuery(Name = "build"), Required, Description("Code of the build.")]
    public string? Build { get; init; }

    [FromQuery(Name = "objective"), Description("What counts first, in each plan and in the order: cheapest, soonest, surest or most-kept; cheapest when left out.")]
    public string? Objective { get; init; }

    internal PlanObjective Aim => Objective is null ? PlanObjective.Cheapest : Codes.Get<PlanObjective>(Objective);

    internal string LinkTo(int version, DateOnly today) =>
        Fill(new Permalink("/api/donors").With("build", Build).With("objective", Codes.Of(Aim)), version, today).ToString();
}

internal sealed class DonorsRules : BuildDayRules<DonorsRequest>
{
    public DonorsRules()
    {
        RuleFor(request => request.Build).MustBeGiven("the code of a build", "the builds are listed at /api/builds");
        RuleFor(request => request.Objective).Must(objective => objective is null || Codes.Find<PlanObjective>(objective) is not null)
            .Otherwise($"one of {string.Join(", ", Codes.All<PlanObjective>())}", "leave it out for the cheapest");
    }
}

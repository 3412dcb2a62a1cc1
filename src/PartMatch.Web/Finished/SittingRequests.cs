using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Finished;

public sealed record BuildSittingRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromQuery(Name = "who"), Description("Your name, for the history and as the author of the evidence.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why,
    [property: FromQuery(Name = "objective"), Description("What counts first in the plan that the lines are held against, as in the parts list; cheapest when left out.")]
    string? Objective);

internal sealed class BuildSittingRequestRules : AbstractValidator<BuildSittingRequest>
{
    public BuildSittingRequestRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
        RuleFor(request => request.Objective).Must(objective => objective is null || Codes.Find<PlanObjective>(objective) is not null)
            .Otherwise($"one of {string.Join(", ", Codes.All<PlanObjective>())}", "leave it out for the cheapest");
    }
}

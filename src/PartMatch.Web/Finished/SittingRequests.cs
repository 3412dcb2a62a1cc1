using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Web.Editing;

namespace PartMatch.Web.Finished;

public sealed record BuildSittingRequest(
    [property: FromRoute(Name = "build"), Description("Code of the build.")] string Build,
    [property: FromQuery(Name = "who"), Description("Your name, for the history and as the author of the evidence.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why);

internal sealed class BuildSittingRequestRules : AbstractValidator<BuildSittingRequest>
{
    public BuildSittingRequestRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

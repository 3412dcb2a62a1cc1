using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Builds;

/// <summary>What is asked of a plan: why, why not another part, what stands against it.</summary>
internal static class WhyEndpoints
{
    public static void MapWhys(this RouteGroupBuilder api)
    {
        api.MapGet("/builds/{build}/why", Why).WithName("ExplainLine").WithTags("plans")
            .WithSummary("Why a line of the plan is as it is, back to what was asked for, and what else could be there");
        api.MapGet("/builds/{build}/why-not", WhyNot).WithName("ForcePart").WithTags("plans")
            .WithSummary("Why not this part there: the best plan with it, or what it breaks");
        api.MapGet("/builds/{build}/conflict", Conflict).WithName("FindConflict").WithTags("plans")
            .WithSummary("A smallest set of wishes and facts that cannot hold together, each with the change that would resolve it");
    }

    private static Task<Results<Ok<BuildWhy>, Refused, Absent, Clash, Busy>> Why(
        [AsParameters] WhyRequest request, PlanQuestions questions, CancellationToken gone) =>
        questions.AnswerAsync<Ok<BuildWhy>>(
            request.Build, request,
            ready => ready.Facts.Family.FindPosition(request.Line ?? "") is null ? KnownNames.NoPosition(request.Line ?? "", ready.Facts.Family, "line") : null,
            (ready, stop) => BuildWhys.Why(
                ready.Facts, ready.Build, ready.Version, request.Aim, ready.Today, ready.Effort, ready.Memory, request.Line ?? "", stop) is { } why
                ? TypedResults.Ok(why with { Asked = request.AskedOf(why.Asked), Permalink = request.LinkTo("why", ready.Version, ready.Today).With("line", request.Line).ToString() })
                : NoLine(request, ready),
            gone);

    private static Absent NoLine(WhyRequest request, PlanReading.Ready ready) => new(new FieldError(
        "line", request.Line ?? "", "the position of a line of the plan",
        $"there is no plan, or it has no line there: {request.LinkTo("plan", ready.Version, ready.Today)} shows it"));

    private static Task<Results<Ok<BuildWhyNot>, Refused, Absent, Clash, Busy>> WhyNot(
        [AsParameters] WhyNotRequest request, PlanQuestions questions, BuildNames names, PartStore parts, CancellationToken gone)
    {
        var part = "";
        return questions.AnswerAsync<Ok<BuildWhyNot>>(
            request.Build, request,
            ready =>
            {
                if (ready.Facts.Family.FindPosition(request.Position ?? "") is not { } position)
                {
                    return KnownNames.NoPosition(request.Position ?? "", ready.Facts.Family);
                }

                (part, var problem) = FindPart(request.Part ?? "", ready.Facts.Family, position, names, parts);
                return problem is null ? null : new Refused(problem);
            },
            (ready, stop) => TypedResults.Ok(Linked(
                request,
                BuildWhyNots.Ask(
                    ready.Facts, ready.Build, ready.Version, request.Aim, ready.Today, ready.Effort, ready.Memory, request.Position ?? "", part, stop),
                request.LinkTo("why-not", ready.Version, ready.Today).With("position", request.Position).With("part", part).ToString())),
            gone);
    }

    // The plan with the part, and what the part breaks, are asked for again by the same question.
    private static BuildWhyNot Linked(WhyNotRequest request, BuildWhyNot answer, string link) => answer with
    {
        Asked = request.AskedOf(answer.Asked),
        Permalink = link,
        Plan = answer.Plan is { } plan ? plan with { Asked = request.AskedOf(plan.Asked), Permalink = link } : null,
        Conflict = answer.Conflict is { } conflict ? conflict with { Asked = request.AskedOf(conflict.Asked), Permalink = link } : null,
    };

    private static Task<Results<Ok<BuildConflict>, Refused, Absent, Clash, Busy>> Conflict(
        [AsParameters] PlanRequest request, PlanQuestions questions, CancellationToken gone) =>
        questions.AnswerAsync<Ok<BuildConflict>>(
            request.Build, request, _ => null,
            (ready, stop) =>
            {
                var found = BuildConflicts.Find(ready.Facts, ready.Build, ready.Version, request.Aim, ready.Today, ready.Effort, ready.Memory, stop);
                return TypedResults.Ok(found with
                {
                    Asked = request.AskedOf(found.Asked),
                    Permalink = request.LinkTo("conflict", ready.Version, ready.Today).ToString(),
                });
            },
            gone);

    /// <summary>The id of the part that is to be there, <see cref="Part.None"/> included; or why nothing there can be that.</summary>
    private static (string Id, Problem? Problem) FindPart(string written, FamilyFacts facts, Position position, BuildNames names, PartStore parts)
    {
        if (written == Part.None)
        {
            return (written, null);
        }

        var named = NamedPart.Find(written, null, parts);
        if (named.IsAmbiguous && facts.FindPart(written) is null)
        {
            return ("", named.ToProblem("part"));
        }

        var id = facts.FindPart(written)?.Id ?? named.Part?.Id ?? written;
        return names.PartFault("part", id, facts, [position.Kind]) is { } fault ? ("", Problem.Of("bad-question", fault)) : (id, null);
    }
}

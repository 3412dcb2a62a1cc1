using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Sums;
using PartMatch.Core.Tightening;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Tightening;

internal static class TighteningEndpoints
{
    public static void MapTightening(this RouteGroupBuilder api) =>
        api.MapGet("/tightening", Judge).WithName("JudgeTightening").WithTags("tightening")
            .WithSummary("What the recorded torques of a fastener, or a typed one, do to the bolt; none is proposed");

    private static Results<Ok<TighteningJudged>, Refused, Absent> Judge([AsParameters] TighteningRequest request, FamilyStore families, PartStore parts)
    {
        if (!request.NamesAPlace)
        {
            return Answer(request, null);
        }

        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return KnownNames.NoFamily(request.Family ?? "", families);
        }

        if (facts.FindVariant(request.Variant ?? "") is null)
        {
            return KnownNames.NoVariant(request.Variant ?? "", facts);
        }

        if (facts.FindPosition(request.Position ?? "") is not { } position)
        {
            return KnownNames.NoPosition(request.Position ?? "", facts);
        }

        var named = request.Part is null ? null : NamedPart.Find(request.Part, null, parts);
        return named is { IsAmbiguous: true } ? new Refused(named.ToProblem("part"))
            : named is { Part: null } ? NoPart(request.Part)
            : Answer(request, new FastenerPlace(facts, request.Variant ?? "", position, named?.Part));
    }

    private static Results<Ok<TighteningJudged>, Refused, Absent> Answer(TighteningRequest request, FastenerPlace? place) =>
        TighteningCheck.Judge(request.ToQuestion(place)) switch
        {
            TighteningJudged judged => TypedResults.Ok(judged with { Permalink = request.Permalink() }),
            SumRefused refused => Refused.Of(refused),
            var other => throw new InvalidOperationException($"A tightening ended as {other.GetType().Name}, which no answer names."),
        };

    // Of a bolt that nobody knows there is nothing to reckon with.
    private static Refused NoPart(string? written) =>
        new(Problem.Of(
            "bad-question", new FieldError("part", written ?? "", "a number that the base knows",
            "look it up under Find a part (/api/parts?q=), or type thread and class")));
}

using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;
using PartMatch.Core.Tightening;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;
using PartMatch.Web.Plots;

namespace PartMatch.Web.Tightening;

internal static class TighteningEndpoints
{
    private const string Plot = "/plots/preload.";

    public static void MapTightening(this RouteGroupBuilder api)
    {
        api.MapGet("/tightening", Judge).WithName("JudgeTightening").WithTags("tightening")
            .WithSummary("What the recorded torques of a fastener, or a typed one, do to the bolt; none is proposed");
        api.MapGet(Plot + PlotAnswer.Form, Draw).WithName("DrawPreload").WithTags("tightening")
            .WithSummary("What each torque pulls, as a share of the proof load, as a drawing, or the numbers behind it");
    }

    private static Results<Ok<TighteningJudged>, Refused, Absent> Judge([AsParameters] TighteningRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            (TighteningJudged judged, _, _) => TypedResults.Ok(judged with { Permalink = request.Permalink(), Plots = [.. Links(judged, request)] }),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!, // one of the three
        };

    private static Results<PlotAnswer, Refused, Absent> Draw(string form, [AsParameters] TighteningRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            (TighteningJudged judged, _, _) when PreloadPlot.Of(judged) is { } plot => new PlotAnswer(plot, form),
            (TighteningJudged, _, _) => new Refused(Problem.Of(
                "not-recorded", new FieldError("torque", "nothing", "a torque that is judged", "type one with its unit, such as 75 N·m"))),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!,
        };

    /// <summary>The answer, or why there is none: one of the three.</summary>
    private static (TighteningJudged? Answer, Refused? Refused, Absent? Absent) Ask(TighteningRequest request, FamilyStore families, PartStore parts)
    {
        if (!request.NamesAPlace)
        {
            return Answer(request, null);
        }

        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return (null, null, KnownNames.NoFamily(request.Family ?? "", families));
        }

        if (facts.FindVariant(request.Variant ?? "") is null)
        {
            return (null, null, KnownNames.NoVariant(request.Variant ?? "", facts));
        }

        if (facts.FindPosition(request.Position ?? "") is not { } position)
        {
            return (null, null, KnownNames.NoPosition(request.Position ?? "", facts));
        }

        var named = request.Part is null ? null : NamedPart.Find(request.Part, null, parts);
        return named is { IsAmbiguous: true } ? (null, new Refused(named.ToProblem("part")), null)
            : named is { Part: null } ? (null, NoPart(request.Part), null)
            : Answer(request, new FastenerPlace(facts, request.Variant ?? "", position, named?.Part));
    }

    private static (TighteningJudged? Answer, Refused? Refused, Absent? Absent) Answer(TighteningRequest request, FastenerPlace? place) =>
        TighteningCheck.Judge(request.ToQuestion(place)) switch
        {
            TighteningJudged judged => (judged, null, null),
            SumRefused refused => (null, Refused.Of(refused), null),
            var other => throw new InvalidOperationException($"A tightening ended as {other.GetType().Name}, which no answer names."),
        };

    private static IEnumerable<PlotLink> Links(TighteningJudged answer, TighteningRequest request)
    {
        if (PreloadPlot.Of(answer) is { } plot)
        {
            yield return new PlotLink("preload", plot.Title, request.Permalink("/api" + Plot + PlotAnswer.Svg));
        }
    }

    // Of a bolt that nobody knows there is nothing to reckon with.
    private static Refused NoPart(string? written) =>
        new(Problem.Of(
            "bad-question", new FieldError("part", written ?? "", "a number that the base knows",
            "look it up under Find a part (/api/parts?q=), or type thread and class")));
}

using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Compression;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Plots;

namespace PartMatch.Web.ValveTiming;

internal static class ValveTimingEndpoints
{
    private const string EventsPlot = "/plots/valve-events.";
    private const string TrappedPlotPath = "/plots/trapped-compression.";

    public static void MapValveTiming(this RouteGroupBuilder api)
    {
        api.MapGet("/valve-timing", Reckon).WithName("ReckonValveTiming").WithTags("valve-timing")
            .WithSummary("When the valves open and close with these camshafts, set like this, and what compression is trapped then");
        api.MapGet(EventsPlot + PlotAnswer.Form, Draw).WithName("DrawValveEvents").WithTags("valve-timing")
            .WithSummary("The valve events as a drawing, or the numbers behind it");
        api.MapGet(TrappedPlotPath + PlotAnswer.Form, DrawTrapped).WithName("DrawTrappedCompression").WithTags("valve-timing")
            .WithSummary("Trapped compression over intake closing as a drawing, or the numbers behind it");
    }

    private static Results<Ok<ValveTimingAnswer>, Refused, Absent> Reckon([AsParameters] ValveTimingRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            (ValveTimingAnswer answer, _, _) => TypedResults.Ok(answer with { Permalink = request.Permalink(), Plots = [.. Links(answer, request)] }),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!, // one of the three
        };

    private static Results<PlotAnswer, Refused, Absent> Draw(string form, [AsParameters] ValveTimingRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            (ValveTimingAnswer answer, _, _) => new PlotAnswer(ValveEventsPlot.Of(answer), form),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!,
        };

    private static Results<PlotAnswer, Refused,
        Absent> DrawTrapped(string form, [AsParameters] ValveTimingRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            (ValveTimingAnswer answer, _, _) when TrappedPlot.Of(answer) is { } plot => new PlotAnswer(plot, form),
            (ValveTimingAnswer answer, _, _) => new Refused(Problem.Of("not-recorded", new FieldError("compression-ratio", "nothing", "compression ratio, "
                + "stroke and rod length", "give what the warnings of the sum name"))),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!,
        };

    /// <summary>The answer, or why there is none: one of the three.</summary>
    private static (ValveTimingAnswer? Answer, Refused? Refused, Absent? Absent) Ask(ValveTimingRequest request, FamilyStore families, PartStore parts)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return (null, null, KnownNames.NoFamily(request.Family ?? "", families));
        }

        if (facts.FindVariant(request.Variant ?? "") is null)
        {
            return (null, null, KnownNames.NoVariant(request.Variant ?? "", facts));
        }

        var named = request.Parts(parts);
        return named.Problem is { } problem
            ? (null, new Refused(problem), null)
            : ValveTimingReckoning.Reckon(facts, request.ToQuestion(named)) switch
            {
                ValveTimingAnswer answer => (answer, null, null),
                SumRefused refused => (null, Refused.Of(refused), null),
                var other => throw new InvalidOperationException($"A valve timing ended as {other.GetType().Name}, which no answer names."),
            };
    }

    private static IEnumerable<PlotLink> Links(ValveTimingAnswer answer, ValveTimingRequest request)
    {
        yield return new PlotLink("valve-events", "Valve events", request.Permalink("/api" + EventsPlot + PlotAnswer.Svg));
        if (TrappedPlot.Of(answer) is { } trapped)
        {
            yield return new PlotLink("trapped-compression", trapped.Title, request.Permalink("/api" + TrappedPlotPath + PlotAnswer.Svg));
        }
    }
}

using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Injectors;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Plots;

namespace PartMatch.Web.Injectors;

internal static class InjectorEndpoints
{
    private const string Api = "/api";
    private const string Answer = "/injectors";

    private static readonly (string Name, Func<InjectorsSized, Plot> Draw)[] _plots =
        [("injector-flow", InjectorPlots.Flow), ("injector-duty", InjectorPlots.Duty), ("pressure-across", InjectorPlots.Pressure)];

    public static void MapInjectors(this RouteGroupBuilder api)
    {
        api.MapGet(Answer, Size).WithName("SizeInjectors").WithTags("injectors")
            .WithSummary("How big the injectors have to be for a goal, and which of the catalogue are enough and fit");
        api.MapGet(RouteOf("injector-flow") + PlotAnswer.Form, DrawFlow).WithName("DrawInjectorFlow").WithTags("injectors")
            .WithSummary("Flow of the injectors over pressure with the need drawn in, or the numbers behind it");
        api.MapGet(RouteOf("injector-duty") + PlotAnswer.Form, DrawDuty).WithName("DrawInjectorDuty").WithTags("injectors")
            .WithSummary("Duty of the injectors over power, or the numbers behind it");
        api.MapGet(RouteOf("pressure-across") + PlotAnswer.Form, DrawPressure).WithName("DrawPressureAcross").WithTags("injectors")
            .WithSummary("Pressure across an injector over boost for both regulators, or the numbers behind it");
    }

    private static Results<Ok<InjectorsSized>, Refused, Absent> Size([AsParameters] InjectorRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            ({ } sized, _, _) => TypedResults.Ok(sized with
            {
                Plots = [.. _plots.Select(plot =>
                    new PlotLink(plot.Name, plot.Draw(sized).Title, request.LinkToAnswer(Api + RouteOf(plot.Name) + PlotAnswer.Svg).ToString()))],
                Permalink = request.LinkToAnswer(Api + Answer).ToString(),
            }),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!, // one of the three
        };

    private static Results<PlotAnswer, Refused, Absent> DrawFlow(string form, [AsParameters] InjectorRequest request, FamilyStore families, PartStore parts) =>
        Draw(InjectorPlots.Flow, form, request, families, parts);

    private static Results<PlotAnswer, Refused, Absent> DrawDuty(string form, [AsParameters] InjectorRequest request, FamilyStore families, PartStore parts) =>
        Draw(InjectorPlots.Duty, form, request, families, parts);

    private static Results<PlotAnswer, Refused,
        Absent> DrawPressure(string form, [AsParameters] InjectorRequest request, FamilyStore families, PartStore parts) =>
        Draw(InjectorPlots.Pressure, form, request, families, parts);

    private static Results<PlotAnswer, Refused, Absent> Draw(
        Func<InjectorsSized, Plot> draw, string form, InjectorRequest request, FamilyStore families, PartStore parts) => Ask(request, families, parts) switch
        {
            ({ } sized, _, _) => new PlotAnswer(draw(sized), form),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!, // one of the three
        };

    private static string RouteOf(string plot) => $"/plots/{plot}.";

    /// <summary>The ranked answer, or why there is none: one of the three.</summary>
    private static (InjectorsSized? Sized, Refused? Refused, Absent? Absent) Ask(InjectorRequest request, FamilyStore families, PartStore parts)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return (null, null, KnownNames.NoFamily(request.Family ?? "", families));
        }

        var kind = InjectorFits.FindPosition(facts)?.Kind;
        var (second, unclear) = ChosenPart.Find(request.StagedWith, "staged-with", kind, parts);
        if (facts.FindVariant(request.Variant ?? "") is null || unclear is not null)
        {
            return (null, unclear, unclear is null ? KnownNames.NoVariant(request.Variant ?? "", facts) : null);
        }

        var injectors = kind is null ? [] : parts.ListOfKind(kind);
        return InjectorSizing.Size(request.ToQuestion(second), injectors, facts.EngineFacts, facts.Variants) switch
        {
            InjectorsSized sized => (InjectorRanking.Rank(sized, facts, injectors), null, null),
            SumRefused refused => (null, Refused.Of(refused), null),
            var other => throw new InvalidOperationException($"A sizing ended as {other.GetType().Name}, which no answer names."),
        };
    }
}

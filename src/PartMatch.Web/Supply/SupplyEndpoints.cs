using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;
using PartMatch.Core.Supply;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.Injectors;
using PartMatch.Web.Plots;

namespace PartMatch.Web.Supply;

internal static class SupplyEndpoints
{
    private const string Api = "/api";
    private const string Answer = "/fuel-supply";
    private const string Plot = "/plots/pump.";

    public static void MapFuelSupply(this RouteGroupBuilder api)
    {
        api.MapGet(Answer, Size).WithName("SizeFuelSupply").WithTags("fuel-supply")
            .WithSummary("What the pump has to deliver for a goal, which link of the supply gives out first, and which pumps of the catalogue are enough and fit");
        api.MapGet(Plot + PlotAnswer.Form, Draw).WithName("DrawPump").WithTags("fuel-supply")
            .WithSummary("Delivery of the pumps over pressure with what the goal wants drawn in, or the numbers behind it");
    }

    private static Results<Ok<SupplySized>, Refused, Absent> Size([AsParameters] SupplyRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            ({ } asked, _, _) => TypedResults.Ok(asked.Sized with
            {
                Plots = [new PlotLink("pump", PumpPlot.Of(asked.Sized, asked.Pumps).Title, request.LinkToAnswer(Api + Plot + PlotAnswer.Svg).ToString())],
                Permalink = request.LinkToAnswer(Api + Answer).ToString(),
            }),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!, // one of the three
        };

    private static Results<PlotAnswer, Refused, Absent> Draw(string form, [AsParameters] SupplyRequest request, FamilyStore families, PartStore parts) =>
        Ask(request, families, parts) switch
        {
            ({ } asked, _, _) => new PlotAnswer(PumpPlot.Of(asked.Sized, asked.Pumps), form),
            (_, { } refused, _) => refused,
            (_, _, var absent) => absent!, // one of the three
        };

    private sealed record Asked(SupplySized Sized, IReadOnlyList<Part> Pumps);

    /// <summary>The ranked answer with the pumps of the catalogue, or why there is none: one of the three.</summary>
    private static (Asked? Asked, Refused? Refused, Absent? Absent) Ask(SupplyRequest request, FamilyStore families, PartStore parts)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return (null, null, KnownNames.NoFamily(request.Family ?? "", families));
        }

        var (injectorKind, pumpKind) = (InjectorFits.FindPosition(facts)?.Kind, PumpRanking.FindPosition(facts)?.Kind);
        var (second, noSecond) = ChosenPart.Find(request.StagedWith, "staged-with", injectorKind, parts);
        var (injector, noInjector) = ChosenPart.Find(request.Injector, "injector", injectorKind, parts);
        var (pump, noPump) = ChosenPart.Find(request.Pump, "pump", pumpKind, parts);
        var unclear = noSecond ?? noInjector ?? noPump;
        if (facts.FindVariant(request.Variant ?? "") is null || unclear is not null)
        {
            return (null, unclear, unclear is null ? KnownNames.NoVariant(request.Variant ?? "", facts) : null);
        }

        var pumps = pumpKind is null ? [] : parts.ListOfKind(pumpKind);
        return SupplySizing.Size(request.ToQuestion(second, injector, pump, facts), injectorKind is null ? [] : parts.ListOfKind(injectorKind), pumps,
            facts.EngineFacts) switch
        {
            SupplySized sized => (new Asked(PumpRanking.Rank(sized, facts, pumps), pumps), null, null),
            SumRefused refused => (null, Refused.Of(refused), null),
            var other => throw new InvalidOperationException($"A supply ended as {other.GetType().Name}, which no answer names."),
        };
    }
}

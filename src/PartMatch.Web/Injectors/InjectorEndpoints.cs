using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Sums;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;

namespace PartMatch.Web.Injectors;

internal static class InjectorEndpoints
{
    public static void MapInjectors(this RouteGroupBuilder api) =>
        api.MapGet("/injectors", Size).WithName("SizeInjectors").WithTags("injectors")
            .WithSummary("How big the injectors have to be for a goal, and which of the catalogue are enough and fit");

    private static Results<Ok<InjectorsSized>, Refused, Absent> Size([AsParameters] InjectorRequest request, FamilyStore families, PartStore parts)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return KnownNames.NoFamily(request.Family ?? "", families);
        }

        return facts.FindVariant(request.Variant ?? "") is null
            ? KnownNames.NoVariant(request.Variant ?? "", facts)
            : Answer(request, facts, InjectorFits.FindPosition(facts) is { } position ? parts.ListOfKind(position.Kind) : []);
    }

    private static Results<Ok<InjectorsSized>, Refused, Absent> Answer(InjectorRequest request, FamilyFacts facts, IReadOnlyList<Part> injectors) =>
        InjectorSizing.Size(request.ToQuestion(), injectors, facts.EngineFacts) switch
        {
            InjectorsSized sized => TypedResults.Ok(sized with
            {
                Injectors = InjectorRanking.Rank(sized.Injectors, InjectorFits.Of(facts, sized.Asked.Variant, injectors)),
                Permalink = request.Permalink(),
            }),
            SumRefused refused => Refused.Of(refused),
            var other => throw new InvalidOperationException($"A sizing ended as {other.GetType().Name}, which no answer names."),
        };
}

using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Storage.Families;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Consistency;

internal static class ConsistencyEndpoints
{
    public static void MapConsistency(this RouteGroupBuilder api) =>
        api.MapGet("/consistency", Check).WithName("CheckConsistency").WithTags("consistency")
            .WithSummary("What the base can find wrong or missing in a family by itself, worst first, and which measurement would settle most");

    private static Results<Ok<ConsistencyAnswer>, Refused, Absent> Check(
        [AsParameters] ConsistencyRequest request, FamilyStore families, LookAlikeSource lookAlikes)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return KnownNames.NoFamily(request.Family ?? "", families);
        }

        var question = request.ToQuestion();
        return question.Variant is { } variant && facts.FindVariant(variant) is null
            ? KnownNames.NoVariant(variant, facts)
            : TypedResults.Ok(ConsistencyCheck.Decide(facts, question, question.Sort == FaultSort.NearUnjudged ? lookAlikes.Get() : null) with
            {
                Permalink = new Permalink("/api/consistency").With("family", facts.Family.Code).With("variant", question.Variant)
                    .With("sort", question.Sort is { } sort ? Codes.Of(sort) : null).With("limit", question.Limit).ToString(),
            });
    }
}

using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Families;
using PartMatch.Storage.Families;
using PartMatch.Web.Http;

namespace PartMatch.Web.Families;

internal static class FamilyEndpoints
{
    public static void MapFamilies(this RouteGroupBuilder api)
    {
        api.MapGet("/families", List).WithName("ListFamilies").WithTags("families")
            .WithSummary("Every engine family of the base");
        api.MapGet("/families/{family}", Show).WithName("ShowFamily").WithTags("families")
            .WithSummary("One family: its variants and its positions");
        api.MapGet("/families/{family}/variants/{variant}", ShowVariant).WithName("ShowVariant").WithTags("families")
            .WithSummary("One variant: facts about the engine, and what the maker fitted at every position");
    }

    private static Ok<FamiliesAnswer> List(FamilyStore families) =>
        TypedResults.Ok(new FamiliesAnswer(new NothingAsked(), families.List()) { Permalink = "/api/families" });

    private static Results<Ok<FamilyAnswer>, Absent> Show(string family, FamilyStore families)
    {
        if (families.FindFamily(family) is not { } facts)
        {
            return KnownNames.NoFamily(family, families);
        }

        return TypedResults.Ok(FamilyDescriber.Describe(facts) with { Permalink = Permalink.To("/api/families", family).ToString() });
    }

    private static Results<Ok<VariantAnswer>, Absent> ShowVariant(string family, string variant, FamilyStore families)
    {
        if (families.FindFamily(family) is not { } facts)
        {
            return KnownNames.NoFamily(family, families);
        }

        if (facts.FindVariant(variant) is not { } found)
        {
            return KnownNames.NoVariant(variant, facts);
        }

        return TypedResults.Ok(FamilyDescriber.Describe(facts, found) with { Permalink = Permalink.To("/api/families", family, "variants", variant).ToString() });
    }
}

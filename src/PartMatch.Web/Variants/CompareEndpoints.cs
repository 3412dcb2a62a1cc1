using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Variants;
using PartMatch.Storage.Families;
using PartMatch.Web.Families;
using PartMatch.Web.Http;

namespace PartMatch.Web.Variants;

internal static class CompareEndpoints
{
    public static void MapCompare(this RouteGroupBuilder api) =>
        api.MapGet("/compare", Compare).WithName("CompareVariants").WithTags("variants")
            .WithSummary("Position by position, what variants share, in what they differ, and whether a part goes across");

    private static Results<Ok<CompareAnswer>, Refused, Absent> Compare([AsParameters] CompareRequest request, FamilyStore families)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return KnownNames.NoFamily(request.Family ?? "", families);
        }

        var question = request.ToQuestion(facts);
        return FindUnknownVariant(question, facts) is { } variant ? KnownNames.NoVariant(variant, facts, "variants")
            : FindUnknownGroup(question, facts) is { } group ? KnownNames.NoGroup(group, facts)
            : TypedResults.Ok(Decide(facts, question));
    }

    private static CompareAnswer Decide(FamilyFacts facts, CompareQuestion question)
    {
        var answer = VariantComparison.Decide(facts, question);
        return answer with { Permalink = LinkTo(answer.Asked) };
    }

    private static string? FindUnknownVariant(CompareQuestion question, FamilyFacts facts) =>
        question.Variants.Concat(question.Built.Keys).FirstOrDefault(code => facts.FindVariant(code) is null);

    private static string? FindUnknownGroup(CompareQuestion question, FamilyFacts facts) =>
        facts.Positions.Any(position => position.Group == question.Group) ? null : question.Group;

    private static string LinkTo(CompareAsked asked) => new Permalink("/api/compare")
        .With("family", asked.Family).With("variants", string.Join(',', asked.Variants)).With("group", asked.Group)
        .With("show", Codes.Of(asked.Show)).WithEach("built", asked.Built).ToString();
}

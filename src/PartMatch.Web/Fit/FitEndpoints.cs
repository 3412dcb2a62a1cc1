using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;

namespace PartMatch.Web.Fit;

internal static class FitEndpoints
{
    public static void MapFit(this RouteGroupBuilder api) =>
        api.MapGet("/fit", Fit).WithName("CheckFit").WithTags("fit")
            .WithSummary("Does a part, or what another variant has there, fit at a position of a variant, and does the engine run the same?");

    private static Results<Ok<FitAnswer>, Refused, Absent> Fit([AsParameters] FitRequest request, FamilyStore families, PartStore parts)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return KnownNames.NoFamily(request.Family ?? "", families);
        }

        if (FindUnknown(request, facts) is { } absent)
        {
            return absent;
        }

        var reading = FitReading.Read(request, parts);
        return reading.Question is { } question ? Answer(facts, question) : new Refused(reading.Problem ?? Problem.Of("bad-question"));
    }

    private static Ok<FitAnswer> Answer(FamilyFacts facts, FitQuestion question)
    {
        var answer = question.From is { } from ? FitCheck.DecideFrom(facts, from, null, question) : FitCheck.Decide(facts, question);
        return TypedResults.Ok(answer with { Permalink = LinkTo(answer.Asked) });
    }

    private static Absent? FindUnknown(FitRequest request, FamilyFacts facts)
    {
        string[] positions = [request.Position ?? "", .. request.Neighbours.Select(pair => pair.Position)];
        return facts.FindVariant(request.Variant ?? "") is null ? KnownNames.NoVariant(request.Variant ?? "", facts)
            : !string.IsNullOrEmpty(request.From) && facts.FindVariant(request.From) is null ? KnownNames.NoVariant(request.From, facts, "from")
            : Array.FindIndex(positions, position => facts.FindPosition(position) is null) is >= 0 and var at ? KnownNames.NoPosition(positions[at], facts, at == 0 ? "position" : "with")
            : null;
    }

    private static string LinkTo(FitAsked asked) => new Permalink("/api/fit")
        .With("family", asked.Family).With("variant", asked.Variant).With("position", asked.Position)
        .With("part", asked.From is null ? asked.Part ?? asked.Number : null).With("from", asked.From)
        .With("built", asked.Built).With("serial", asked.Serial).WithEach("with", asked.With).ToString();
}

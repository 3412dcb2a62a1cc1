using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;
using PartMatch.Storage.Families;
using PartMatch.Storage.Items;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Fit;

internal static class FitEndpoints
{
    private const int MostNearest = 5;

    public static void MapFit(this RouteGroupBuilder api) =>
        api.MapGet("/fit", Fit).WithName("CheckFit").WithTags("fit")
            .WithSummary("Does a part, or what another variant has there, fit at a position of a variant, and does the engine run the same?");

    private static Results<Ok<FitAnswer>, Refused, Absent> Fit(
        [AsParameters] FitRequest request, FamilyStore families, PartStore parts, ItemStore items, LookAlikeSource lookAlikes) =>
        FitReading.Read(request, families, parts, items) switch
        {
            FitReading.Ready ready => TypedResults.Ok(Decide(ready, lookAlikes)),
            FitReading.NotHeld absent => absent.Answer,
            FitReading.Unclear unclear => unclear.Answer,
            var other => throw new InvalidOperationException($"A fit request was read as {other.GetType().Name}, which no answer names."),
        };

    private static FitAnswer Decide(FitReading.Ready ready, LookAlikeSource lookAlikes)
    {
        var (facts, question) = ready;
        var answer = question.From is { } from ? FitCheck.DecideFrom(facts, from, null, question) : FitCheck.Decide(facts, question);
        var judged = question.Part ?? (answer.Asked.Part is { } id ? facts.FindPart(id) : null); // from= names no part; the answer does
        return answer with
        {
            Permalink = LinkTo(answer.Asked),
            NearestNumbers = answer.Identity.Relation == IdentityRelation.UnknownNumber && question.Number is { } number ? Nearest(lookAlikes.Get(), number) : [],
            LookAlikes = judged is { IsNothing: false } part ? LookAlikeSearch.Warn(lookAlikes.Get(), part, facts.Family.Code) : [],
        };
    }

    private static IReadOnlyList<NearestNumber> Nearest(LookAlikeFacts facts, string number)
    {
        var (maker, written) = NamedPart.Split(number);
        var near = NearSearch.Decide(facts.Numbers, new NearQuestion(written, maker, Limit: MostNearest));
        return [.. near.Numbers.Select(one => new NearestNumber(one.Number, one.Part, one.Edits))];
    }

    private static string LinkTo(FitAsked asked) => new Permalink("/api/fit")
        .With("family", asked.Family).With("variant", asked.Variant).With("position", asked.Position)
        .With("part", asked.From is null && asked.Item is null ? asked.Part ?? asked.Number : null).With("from", asked.From).With("item", asked.Item)
        .With("built", asked.Built).With("serial", asked.Serial).WithEach("with", asked.With).ToString();
}

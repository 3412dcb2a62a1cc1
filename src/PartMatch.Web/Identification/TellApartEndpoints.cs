using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Storage.Families;
using PartMatch.Storage.Parts;
using PartMatch.Web.Families;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Identification;

internal static class TellApartEndpoints
{
    public static void MapTellApart(this RouteGroupBuilder api) =>
        api.MapGet("/tell-apart", TellApart).WithName("TellApart").WithTags("look-alikes")
            .WithSummary("Which of these parts, or which variant of an engine, is it: the checks of least effort, before paying or in hand");

    private static Results<Ok<TellApartAnswer>, Refused, Absent> TellApart(
        [AsParameters] TellApartRequest request, FamilyStore families, PartStore parts, LookAlikeSource lookAlikes) =>
        request.IsAboutVariants ? OfVariants(request, families) : OfParts(request, parts, lookAlikes);

    private static Results<Ok<TellApartAnswer>, Refused, Absent> OfParts(TellApartRequest request, PartStore parts, LookAlikeSource lookAlikes)
    {
        NamedPart[] named = [.. request.PartList.Select(written => NamedPart.Find(written, null, parts))];
        string[] ids = [.. named.SelectMany(one => one.Candidates).Select(part => part.Id).Distinct(StringComparer.Ordinal)];
        var problem = named.Select(FindProblem).FirstOrDefault(found => found is not null) ?? FindTooMany(request, ids.Length);
        return problem is not null ? new Refused(problem) : Shown(PartIdentification.Decide(lookAlikes.Get(), ids, request.Terms));
    }

    private static Results<Ok<TellApartAnswer>, Refused, Absent> OfVariants(TellApartRequest request, FamilyStore families)
    {
        if (families.FindFamily(request.Family ?? "") is not { } facts)
        {
            return KnownNames.NoFamily(request.Family ?? "", families);
        }

        IReadOnlyList<string> variants = request.VariantList.Count > 0 ? request.VariantList : [.. facts.Variants.Select(variant => variant.Code)];
        return variants.FirstOrDefault(code => facts.FindVariant(code) is null) is { } unknown
            ? KnownNames.NoVariant(unknown, facts, "variants")
            : Shown(VariantIdentification.Decide(facts, variants, request.Terms));
    }

    private static Results<Ok<TellApartAnswer>, Refused, Absent> Shown(TellApartOutcome outcome) => outcome switch
    {
        TellApartDecided decided => TypedResults.Ok(decided.Answer with { Permalink = LinkTo(decided.Answer.Asked) }),
        SeenRefused refused => new Refused(Problem.Of("bad-question", new FieldError("seen", refused.Found, refused.Expected, refused.Mend))),
        _ => throw new InvalidOperationException($"An outcome of type {outcome.GetType().Name} has no answer."),
    };

    // A number that nobody knows has no features to be told apart by. One that two makers use is asked about. A casting mark stands for all that carry it: to
    // find out which of them it is, is the very question.
    private static Problem? FindProblem(NamedPart named) => named switch
    {
        { IsAmbiguous: true, Identifies: true } => named.ToProblem("parts"),
        { Candidates.Count: 0 } => Problem.Of("bad-question", new FieldError("parts", named.Written, "numbers that the base knows", $"the nearest known numbers are at /api/numbers/{Uri.EscapeDataString(named.Written)}/near")),
        _ => null,
    };

    private static Problem? FindTooMany(TellApartRequest request, int parts) => parts <= PartIdentification.MostParts
        ? null
        : Problem.Of("bad-question", new FieldError(
            "parts", $"{request.Parts}, which can mean {parts} parts", $"at most {PartIdentification.MostParts} parts, casting marks counted with all that carry them", "ask with the parts' own numbers"));

    private static string LinkTo(TellApartAsked asked) => new Permalink("/api/tell-apart")
        .With("parts", asked.Parts.Count > 0 ? string.Join(',', asked.Parts) : null)
        .With("family", asked.Family).With("variants", asked.Variants.Count > 0 ? string.Join(',', asked.Variants) : null)
        .With("mode", Codes.Of(asked.Mode))
        .With("tools", asked.Mode == CheckMode.InHand && asked.Tools.Count < TellApartTerms.AllTools.Count ? ToolList(asked.Tools) : null)
        .WithEach("seen", asked.Seen).ToString();

    private static string ToolList(IReadOnlyList<Method> tools) => tools.Count == 0 ? TellApartRequest.NoTools : string.Join(',', tools.Select(Codes.Of));
}

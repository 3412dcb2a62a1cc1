using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Parts;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Parts;

internal static class PartEndpoints
{
    public static void MapParts(this RouteGroupBuilder api)
    {
        api.MapGet("/parts", Search).WithName("SearchParts").WithTags("parts")
            .WithSummary("Parts by the beginning or middle of a number, or by words of a name");
        api.MapGet("/parts/{number}", Show).WithName("ShowParts").WithTags("parts")
            .WithSummary("Every part that a written number can mean, with all that the base holds of it");
    }

    private static Ok<PartSearchAnswer> Search([AsParameters] PartSearchRequest request, PartStore parts, PartIndexSource index, LookAlikeSource lookAlikes)
    {
        var asked = new PartSearchAsked(request.Query?.Trim() ?? "", CommonRules.PageSize(request.Limit), request.Cursor);
        var page = parts.Search(asked.Q, asked.Limit, asked.Cursor, index.Find());
        var facts = lookAlikes.Get();
        var found = page.Parts.Select(part => new FoundPart(part.Part, part.Maker, part.Number, part.Kind, part.Name, LookAlikeSearch.LargestDanger(facts, part.Part)));
        return TypedResults.Ok(new PartSearchAnswer(asked, [.. found], page.Total, page.Cursor)
        {
            Permalink = new Permalink("/api/parts").With("q", asked.Q).With("limit", asked.Limit).With("cursor", asked.Cursor).ToString(),
        });
    }

    private static Ok<PartsAnswer> Show([AsParameters] PartRequest request, PartStore parts)
    {
        var (maker, number) = NamedPart.Split(request.Written);
        var asked = new PartsAsked(number, NumberKey.Of(number), maker ?? request.Maker);
        var found = parts.FindByNumber(asked.Number, asked.Maker).Select(part => parts.FindRecord(part.Id)).OfType<PartRecord>();
        return TypedResults.Ok(new PartsAnswer(asked, [.. found.Select(PartDescriber.Describe)])
        {
            Permalink = Permalink.To("/api/parts", asked.Number).With("maker", asked.Maker).ToString(),
        });
    }
}

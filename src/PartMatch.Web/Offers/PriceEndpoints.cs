using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Plots;
using PartMatch.Storage.Offers;
using PartMatch.Storage.Parts;
using PartMatch.Web.Parts;
using PartMatch.Web.Plots;

namespace PartMatch.Web.Offers;

internal static class PriceEndpoints
{
    private const string Plot = "/plots/prices.";

    public static void MapPrices(this RouteGroupBuilder api)
    {
        api.MapGet("/parts/{number}/prices", Show).WithName("ShowPrices").WithTags("offers")
            .WithSummary("What was asked for a number, offer by offer, and the least, middle and greatest price by currency and condition");
        api.MapGet(Plot + PlotAnswer.Form, Draw).WithName("DrawPrices").WithTags("offers").WithSummary("The prices of a number over the days they were seen, or the numbers behind it");
    }

    private static Ok<PricesAnswer> Show([AsParameters] PricesRequest request, OfferStore offers, PartStore parts)
    {
        var (asked, known) = Find(request.Written, request.Maker, parts);
        var history = PriceHistory.Of(offers.Facts(), known, asked.NumberKey);
        var drawn = new Permalink("/api" + Plot + PlotAnswer.Svg).With("number", asked.Number).With("maker", asked.Maker).ToString();
        return TypedResults.Ok(new PricesAnswer(
            asked, known, history.Points, history.Ranges, history.Ranges is [] ? [] : [new PlotLink("prices", $"Prices asked for {asked.Number}", drawn)],
            Permalink.To("/api/parts", asked.Number, "prices").With("maker", asked.Maker).ToString()));
    }

    private static PlotAnswer Draw(string form, [AsParameters] PricePlotRequest request, OfferStore offers, PartStore parts, TimeProvider time)
    {
        var (asked, known) = Find(request.Number ?? "", request.Maker, parts);
        return new PlotAnswer(
            PricePlot.Of(asked.Number, PriceHistory.Of(offers.Facts(), known, asked.NumberKey), OfferRules.DayOf(request.On) ?? time.Today(),
                request.Currency), form);
    }

    private static (PricesAsked Asked, IReadOnlyList<string> Known) Find(string written, string? maker, PartStore parts)
    {
        var (writtenMaker, number) = NamedPart.Split(written);
        var asked = new PricesAsked(number, NumberKey.Of(number), writtenMaker ?? maker);
        return (asked, [.. parts.FindByNumber(asked.Number, asked.Maker).Select(part => part.Id)]);
    }
}

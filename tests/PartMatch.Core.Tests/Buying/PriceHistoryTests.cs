using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using PartMatch.Core.Plots;
using Xunit;
using static PartMatch.Core.Tests.Buying.Shop;

namespace PartMatch.Core.Tests.Buying;

public sealed class PriceHistoryTests
{
    private static readonly DateOnly _first = new(2026, 6, 1);

    // Used, in pounds: 84.00, 90.00 for two = 45.00, 60.01; new, in euros: 100.00 and 110.01.
    private static readonly BuyingFacts _facts = new(
        [
            Pump, Pump with { Code = "of-2", Price = Pounds("90.00"), Pack = 2, SeenOn = _first.AddDays(5) },
            Pump with { Code = "of-3", Price = Pounds("60.01"), SeenOn = _first.AddDays(5) },
            Pump with { Code = "of-4", Price = Euros("100.00"), Condition = ItemCondition.New }, Pump with { Code = "of-5", Price = Euros("110.01"),
                Condition = ItemCondition.New },
            Pump with { Code = "of-6", Price = Pounds("5.00"), Pack = null }, Pump with { Code = "of-7", Part = "ardlow:77-1", NumberAsWritten = "77-1" },
        ],
        [Abel]);

    [Fact]
    public void Range_is_least_middle_and_greatest_of_one_piece_by_currency_and_condition() =>
        Assert.Equal(
            [
                new PriceRange("EUR", ItemCondition.New, 2, Euros("100.00"), Euros("105.00"), Euros("110.01")), // 105.005 to the even cent
                new PriceRange("GBP", ItemCondition.Used, 3, Pounds("45.00"), Pounds("60.01"), Pounds("84.00")),
            ],
            PriceHistory.Of(_facts, ["ardlow:12/34"], "1234").Ranges);

    [Fact]
    public void Pack_of_unknown_size_is_listed_and_counts_in_no_range() =>
        Assert.Null(PriceHistory.Of(_facts, ["ardlow:12/34"], "1234").Points.Single(point => point.Offer == "of-6").UnitPrice);

    [Fact]
    public void Number_that_nobody_offers_has_no_history()
    {
        var history = PriceHistory.Of(_facts, [], "QZ9");
        Assert.Empty(history.Points);
        Assert.Empty(history.Ranges);
        Assert.Equal("No offer with a price by the piece is recorded.", PricePlot.Of("QZ-9", history, _first, null).Description);
    }

    [Fact]
    public void Drawing_shows_one_currency_and_says_what_is_left_out()
    {
        var plot = Assert.IsType<CurvePlot>(PricePlot.Of("12-34", PriceHistory.Of(_facts, ["ardlow:12/34"], "1234"), _first.AddDays(10), null));

        // Most offers with a price by the piece are in pounds. The line goes through the cheapest of each day: 84.00, then 45.00.
        Assert.Equal("GBP", plot.Y.Unit);
        Assert.Equal((-30, 0), (plot.X.From, plot.X.To));
        Assert.Equal([new PlotPoint(-10, 84), new PlotPoint(-5, 45)], plot.Lines[0].Points);
        Assert.Equal(("used, 3 offers", PlotShape.Circle, 3), (plot.Lines.Single().Name, plot.Lines[0].Shape, plot.Lines[0].Marks.Count));
        Assert.Equal("3 offers: used 45.00 to 84.00 GBP, in the middle 60.01. Not drawn: 2 in EUR, 1 for a pack of unknown size.",
            plot.Description);
        Assert.Equal(["2026-06-06", "Abel", "used", "2", "45.00"], plot.Table.Rows[1]);
        Assert.Equal("No offer with a price by the piece is recorded in SEK. Not drawn: 2 in EUR, 3 in GBP, 1 for a pack of unknown size.",
            PricePlot.Of("12-34", PriceHistory.Of(_facts, ["ardlow:12/34"], "1234"), _first, "SEK").Description);
    }

    // Beside each other even where one of them is a single offer, which no line could name.
    [Fact]
    public void Used_and_new_offers_have_shapes_of_their_own_and_both_stand_in_the_legend()
    {
        var facts = new BuyingFacts(
            [Pump, Pump with { Code = "of-2", Price = Pounds("120.00"), Condition = ItemCondition.New },
                Pump with { Code = "of-3", Price = Pounds("110.00"), Condition = ItemCondition.New, SeenOn = _first.AddDays(5) }], [Abel]);
        var plot = Assert.IsType<CurvePlot>(PricePlot.Of("12-34", PriceHistory.Of(facts, ["ardlow:12/34"], "1234"), _first.AddDays(10), null));
        Assert.Equal(["new, 2 offers", "used, one offer"], plot.Lines.Select(line => line.Name));
        var svg = System.Xml.Linq.XElement.Parse(PlotSvg.Write(plot));
        int Drawn(string look) => svg.Descendants().Count(one => ((string?)one.Attribute("class"))?.Split(' ').Contains(look) == true);
        // Two new offers and one used, each shape once more in the legend; one line, and its sample.
        Assert.Equal((2 + 1, 3 + 2, 1 + 1), (Drawn("plot-square"), Drawn("plot-dot"), Drawn("plot-line")));
    }
}

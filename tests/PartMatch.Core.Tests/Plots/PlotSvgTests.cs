using System.Xml.Linq;
using PartMatch.Core.Plots;
using Xunit;

namespace PartMatch.Core.Tests.Plots;

public sealed class PlotSvgTests
{
    private static readonly PlotTable NoTable = new([], []);

    private static readonly CurvePlot Flow = new(
        "Flow over pressure", "The flow grows with the root of the pressure.", new PlotAxis("pressure across", "bar", 0, 4), new PlotAxis("flow", "cm³/min", 0, 600),
        [new PlotLine("550 at 3.0 bar", [new(0, 0), new(1, 317.5), new(4, 635.1)]) { IsMain = true }, new PlotLine("recorded", [new(3, 550)]) { IsPointsOnly = true }],
        [new PlotBand("the need", [new(0, 400), new(4, 400)], [new(0, 480), new(4, 480)])],
        [new PlotLimit(PlotDirection.Upright, 3, "asked"), new PlotLimit(PlotDirection.Level, 9_000, "far away")], NoTable);

    private static XElement Drawn(Plot plot) => XElement.Parse(PlotSvg.Write(plot));

    private static IEnumerable<XElement> Of(XElement svg, string look) => svg.Descendants().Where(one => ((string?)one.Attribute("class"))?.Split(' ').Contains(look) == true);

    [Fact]
    public void Drawing_says_what_it_is_to_those_who_do_not_see_it()
    {
        var svg = Drawn(Flow);

        Assert.Equal("img", (string?)svg.Attribute("role"));
        Assert.Equal(["Flow over pressure", "The flow grows with the root of the pressure."], svg.Elements().Take(2).Select(one => one.Value));
    }

    [Fact]
    public void Axes_carry_their_unit() => Assert.Equal(["pressure across, bar", "flow, cm³/min"], Of(Drawn(Flow), "plot-name").Select(one => one.Value));

    // Field: 72 … 620 wide, 16 … 316 high. 1 bar of 4 is 72 + 548 ÷ 4 = 209; 317.5 of 600 is 316 − 300 × 317.5 ÷ 600 = 157.25.
    [Fact]
    public void Points_stand_where_the_axes_put_them() => Assert.StartsWith("M72 316L209 157.25", (string?)Of(Drawn(Flow), "plot-main").First().Attribute("d"));

    [Fact]
    public void Lines_and_bands_are_in_the_legend()
    {
        var texts = Of(Drawn(Flow), "plot-text").Select(one => one.Value).ToList();

        Assert.Equal(["asked", "550 at 3.0 bar", "recorded", "the need"], texts);
    }

    // 3 bar of 4 is 72 + 548 × 3 ÷ 4 = 483.
    [Fact]
    public void Named_point_has_its_name_left_of_it()
    {
        var named = Flow with { Lines = [Flow.Lines[0], Flow.Lines[1] with { Points = [new(3, 550) { Name = "ts" }] }] };
        var name = Of(Drawn(named), "plot-text").Single(one => one.Value == "ts");

        Assert.Equal("end", (string?)name.Attribute("text-anchor"));
        Assert.True((double?)name.Attribute("x") < 483 - 4);
    }

    [Fact]
    public void Second_line_differs_by_its_dashes_not_only_by_colour()
    {
        var two = Flow with { Lines = [Flow.Lines[0], Flow.Lines[0] with { Name = "another", IsMain = false }] };

        var dashes = Of(Drawn(two), "plot-line").Select(one => (string?)one.Attribute("stroke-dasharray")).Distinct().ToList();

        Assert.Equal([null, "9 5"], dashes);
    }

    [Fact]
    public void Seven_lines_are_refused() => Assert.Throws<ArgumentException>(() => PlotSvg.Write(Flow with { Lines = [.. Enumerable.Repeat(Flow.Lines[0], 7)] }));

    [Fact]
    public void Name_with_signs_of_markup_stays_text()
    {
        var svg = Drawn(Flow with { Title = "<script>alert(1)</script> & \"co\"" });

        Assert.Equal("<script>alert(1)</script> & \"co\"", svg.Elements().First().Value);
        Assert.DoesNotContain(svg.Descendants(), one => one.Name.LocalName == "script");
    }

    [Fact]
    public void Drawing_by_itself_names_its_style_sheet() =>
        Assert.StartsWith("<?xml-stylesheet type=\"text/css\" href=\"/css/plots.css\"?><svg", PlotSvg.Write(Flow, "/css/plots.css"));

    [Fact]
    public void Bars_stand_in_their_rows()
    {
        var events = new RowPlot(
            "Valve events", "When the valves are open.", new PlotAxis("crank angle after top dead centre", "°", 0, 720) { Step = 90 },
            [new PlotRow("intake", [new PlotBar(350, 590, "opens 10° before, closes 50° after")]), new PlotRow("exhaust", [new PlotBar(130, 370, "as built") { IsFaint = true }])],
            [new PlotLimit(PlotDirection.Upright, 360, "top dead centre")], NoTable);

        var svg = Drawn(events);

        // Field from 24 to 620: 350° is 24 + 596 × 350 ÷ 720 = 313.72, 240° are 198.67 long.
        var bar = Of(svg, "plot-bar").First();
        Assert.Equal(("313.72", "198.67"), ((string?)bar.Attribute("x"), (string?)bar.Attribute("width")));
        Assert.Contains("intake: opens 10° before, closes 50° after", Of(svg, "plot-text").Select(one => one.Value));
    }

    [Fact]
    public void Numbers_that_are_none_leave_no_trace()
    {
        var broken = Flow with { Lines = [new PlotLine("holes", [new(0, double.NaN), new(1, 2), new(2, double.PositiveInfinity)])] };

        Assert.DoesNotContain("NaN", PlotSvg.Write(broken), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("∞", PlotSvg.Write(broken), StringComparison.Ordinal);
    }
}

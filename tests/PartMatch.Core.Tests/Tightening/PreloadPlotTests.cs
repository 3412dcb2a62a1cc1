using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Plots;
using PartMatch.Core.Tightening;
using Xunit;

namespace PartMatch.Core.Tests.Tightening;

public sealed class PreloadPlotTests
{
    // M10 of class 8.8: proof load 33.7 kN, least breaking load 46.4 kN (ISO 898-1), so the second limit is at 46.4 ÷ 33.7 = 137.7 %.
    // 75.83 ÷ (0.30 × 0.010) = 25.28 kN = 75.0 % dry, ÷ (0.18 × 0.010) = 42.13 kN = 125 % oiled; ± 30 %: 52.5 … 97.5 and 87.5 … 162.5 %.
    [Fact]
    public void Typed_torque_is_drawn_as_told_and_faintly_oiled_between_its_scatter()
    {
        var plot = Assert.IsType<RowPlot>(PreloadPlot.Of(Ask("75.83 N·m")));

        Assert.Equal(["as asked, 75.83 N·m, dry", "as asked, 75.83 N·m, oiled"], plot.Rows.Select(row => row.Name));
        Assert.Equal([[52.5, 75.0, 97.5], [87.5, 125.0, 162.5]], plot.Rows.Select(Ends));
        Assert.Equal([false, true], plot.Rows.Select(row => row.Bars.All(bar => bar.IsFaint)));
        Assert.Equal([("proof load", 100.0), ("least breaking load", 137.7)], plot.Limits.Select(limit => (limit.Name, Math.Round(limit.At, 1))));
        Assert.Equal(["as asked", "75.83 N·m", "dry", "17.7 … 25.3 … 32.9 kN", "53 … 75 … 98 %"], plot.Table.Rows[0]);
    }

    [Fact]
    public void An_answer_without_a_judged_torque_has_no_drawing() => Assert.Null(PreloadPlot.Of(Ask("75.83 N·m") with { Torque = null }));

    private static double[] Ends(PlotRow row) => [Math.Round(row.Bars[0].From, 1), Math.Round(row.Bars[0].To, 1), Math.Round(row.Bars[1].To, 1)];

    private static TighteningJudged Ask(string torque) => Assert.IsType<TighteningJudged>(TighteningCheck.Judge(new TighteningQuestion
    {
        Thread = "M10×1.5",
        Class = PropertyClass.Find("8.8"),
        Lubrication = Lubrication.Dry,
        Torque = Assert.IsType<RangeRead>(QuantityRangeParser.Parse(torque, Dimension.Torque)).Range,
    }));
}

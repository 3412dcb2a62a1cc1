using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>Which gasket, skim or bowl alone makes a wanted ratio? With the expected figures, each with the squish it leaves.</summary>
internal static class WantedRatio
{
    public static IEnumerable<WantedWay> Ways(Cylinder now, double ratio)
    {
        var remove = now.ClearanceM3 - ClearanceVolume.For(ratio, now.SweptM3);
        var volume = $"{InCm3(Math.Abs(remove))} {(remove >= 0 ? "less" : "more")} clearance";

        var gasket = now.GasketM - (remove / ClearanceVolume.Area(now.GasketBoreM));
        yield return gasket > 0
            ? Way("gasket of another thickness", gasket, gasket + now.DeckLeftM,
                $"{volume}: a gasket of {InMm(gasket)} tightened instead of {InMm(now.GasketM)}")
            : None("gasket of another thickness", $"{volume}: more than the whole gasket holds");

        var block = remove / ClearanceVolume.Area(now.BoreM);
        yield return remove >= 0
            ? Way("skim of the block", block, now.SquishM - block, $"{volume}: {InMm(block)} more off the face of the block")
            : None("skim of the block", $"{volume}: a skim only takes");

        var head = now.OpeningM2 > 0 ? remove / now.OpeningM2 : double.NaN;
        yield return remove >= 0 && head * now.OpeningM2 <= now.ChamberLeftM3
            ? Way("skim of the head", head, now.SquishM, $"{volume}: {InMm(head)} more off the face of the head, over "
                + $"{SumText.In(SquareCentimetres, now.OpeningM2, "0.0")} of opening")
            : None("skim of the head", remove >= 0 ? $"{volume}: more than the chamber holds" : $"{volume}: a skim only takes");

        var bowl = now.BowlM3 - remove;
        yield return new WantedWay(
            "pistons of another bowl", RangeInCm3(Spread.Exactly(bowl)), RangeInMm(Spread.Exactly(now.SquishM)),
            $"{volume}: a {(bowl >= 0 ? "dish" : "dome")} of {InCm3(Math.Abs(bowl))} instead of a {(now.BowlM3 >= 0 ? "dish" : "dome")} of "
            + $"{InCm3(Math.Abs(now.BowlM3))}");
    }

    private static WantedWay Way(string what, double metres, double squishM, string text) =>
        new(what, RangeInMm(Spread.Exactly(metres)), RangeInMm(Spread.Exactly(squishM)), text);

    private static WantedWay None(string what, string text) => new(what, null, null, text);
}

using PartMatch.Core.Measures;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>Which gasket, skim or bowl alone makes a wanted ratio? With the expected figures, each with the squish it leaves.</summary>
/// <param name="opening">Of the chamber at the face of the head, with its range.</param>
/// <param name="squish">Of the engine as it is asked about, with its range.</param>
internal sealed class WantedRatio(Cylinder now, Spread opening, Spread squish, SquishBound bound)
{
    private const string Gasket = "gasket of another thickness";
    private const string Block = "skim of the block";
    private const string Head = "skim of the head";

    public IEnumerable<WantedWay> Ways(double ratio)
    {
        var remove = now.ClearanceM3 - ClearanceVolume.For(ratio, now.SweptM3);
        var volume = $"{InCm3(Math.Abs(remove))} {(remove >= 0 ? "less" : "more")} clearance";

        var gasket = now.GasketM - (remove / ClearanceVolume.Area(now.GasketBoreM));
        yield return gasket > 0
            ? Way(Gasket, Spread.Exactly(gasket), gasket - now.GasketM, now.GasketM - gasket,
                $"{volume}: a gasket of {InMm(gasket)} tightened instead of {InMm(now.GasketM)}")
            : None(Gasket, $"{volume}: more than the whole gasket holds");

        var block = remove / ClearanceVolume.Area(now.BoreM);
        yield return Skim(Block, remove, Spread.Exactly(block), now.BlockSkimM, -block, $"{volume}: {InMm(block)} more off the face of the block");

        var head = Spread.Exactly(remove) / opening;
        yield return remove < 0 || remove <= now.ChamberLeftM3
            ? Skim(Head, remove, head, now.HeadSkimM, now.SquishWith(head.Expected) - now.SquishM, $"{volume}: {RangeInMm(head).Text} more off the face of "
                + $"the head, over {opening.In(SquareCentimetres, "0.0").Text} of opening{(now.LandM > 0 ? "" : ", a squish land taken as level with it")}")
            : None(Head, $"{volume}: more than the chamber holds");

        var bowl = now.BowlM3 - remove;
        yield return Flagged(new WantedWay(
            "pistons of another bowl", RangeInCm3(Spread.Exactly(bowl)), null,
            $"{volume}: a {(bowl >= 0 ? "dish" : "dome")} of {InCm3(Math.Abs(bowl))} instead of a {(now.BowlM3 >= 0 ? "dish" : "dome")} of "
            + $"{InCm3(Math.Abs(now.BowlM3))}"), 0);
    }

    private WantedWay Skim(string what, double removeM3, Spread more, double already, double squishBy, string text) =>
        removeM3 < 0 ? None(what, $"{InCm3(-removeM3)} more clearance: a skim only takes")
        : already + more.High > CompressionRefusals.DeepestSkimM
            ? None(what, $"{text}: can be more than the {InMm(CompressionRefusals.DeepestSkimM)} in all that these sums take for a skim")
        : Way(what, more, squishBy, more.Expected, already + more.High > CompressionWarnings.UsualSkimM ? $"{text}; {CompressionWarnings.DeepSkim}" : text);

    private WantedWay Way(string what, Spread metres, double squishBy, double nearer, string text) =>
        Flagged(new WantedWay(what, RangeInMm(metres), null, nearer > 0
            ? $"{text}; the head comes {InMm(nearer)} nearer to the crankshaft: measure piston-to-valve by hand" : text), squishBy);

    /// <summary>The squish that is left, with its range; no way where the crown would meet the head.</summary>
    private WantedWay Flagged(WantedWay way, double squishBy)
    {
        var left = new Spread(squish.Low + squishBy, squish.Expected + squishBy, squish.High + squishBy);
        var shown = way with { Squish = RangeInMm(left) };
        return left.Expected <= 0
            ? shown with { Amount = null, Text = $"{way.Text}. Not offered: squish {shown.Squish.Text}, the crown would meet the head" }
            : bound.Says(left) is { } says ? shown with { Text = $"{way.Text}. Squish {shown.Squish.Text}; {says}. {SquishBound.Measure}", IsSquishFlagged = true }
            : shown;
    }

    private static WantedWay None(string what, string text) => new(what, null, null, text);
}

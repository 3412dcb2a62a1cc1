namespace PartMatch.Core.Compression;

/// <summary>What one cylinder's compression is built up from. Base units.</summary>
/// <param name="ChamberM3">In the head, valves and plug fitted, before any skim.</param>
/// <param name="BowlM3">In the piston; a dome is negative, valve pockets belong to it.</param>
/// <param name="GasketM">Thickness tightened.</param>
/// <param name="GasketBoreM">Hole over the cylinder.</param>
/// <param name="DeckM">Crown edge below the block's face at top dead centre, before any skim; negative = above.</param>
/// <param name="HeadSkimM">Taken off the face of the head.</param>
/// <param name="BlockSkimM">Taken off the face of the block.</param>
/// <param name="OpeningM2">Of the chamber at the face of the head.</param>
/// <param name="LandM">How deep the squish land lies below the face of the head, before any skim; 0 = level with it.</param>
/// <remarks>
/// A skim of the block lowers the deck and with it the squish. A skim of the head cuts a land that is level with the face as well: it meets the crown at the
/// same gasket as before, and only volume is taken. A land below the face comes nearer by as much as is taken, until the skim reaches it.
/// The gap beside the top land is left out; it is a few percent of the clearance (Heywood 1988, 6.5, from memory), the same before and after.
/// </remarks>
public readonly record struct Cylinder(
    double BoreM, double StrokeM, double RodM, double ChamberM3, double BowlM3, double GasketM, double GasketBoreM, double DeckM, double HeadSkimM,
    double BlockSkimM, double OpeningM2, double LandM = 0)
{
    public double SweptM3 => ClearanceVolume.Swept(BoreM, StrokeM);

    public double ChamberLeftM3 => ChamberM3 - (HeadSkimM * OpeningM2);

    public double GasketM3 => ClearanceVolume.Area(GasketBoreM) * GasketM;

    /// <summary>After the skim of the block.</summary>
    public double DeckLeftM => DeckM - BlockSkimM;

    public double DeckM3 => ClearanceVolume.Area(BoreM) * DeckLeftM;

    public double ClearanceM3 => ChamberLeftM3 + BowlM3 + GasketM3 + DeckM3;

    public double Ratio => ClearanceVolume.Ratio(SweptM3, ClearanceM3);

    /// <summary>Between a flat land of the head and the flat of the crown at top dead centre, cold and at rest.</summary>
    public double SquishM => SquishWith(0);

    /// <summary>After so much more is taken off the face of the head.</summary>
    public double SquishWith(double moreOffTheHeadM) => GasketM + DeckLeftM + Math.Max(LandM - HeadSkimM - moreOffTheHeadM, 0);

    public SliderCrank Crank => new(StrokeM, RodM);
}

namespace PartMatch.Core.ValveTiming;

/// <summary>
/// A toothed wheel of the valve drive: chain, belt or gears alike. Which way it turns changes nothing here: advance is always on in its own direction.
/// </summary>
public static class TimingWheel
{
    /// <summary>Turns of the crank for one of a camshaft in a four-stroke engine.</summary>
    public const double CrankTurnsOfCam = 2;

    private const double Turn = 360;

    /// <summary>Degrees of the crank for one tooth: 360 ÷ teeth × crank turns in one turn of that wheel (720 ÷ teeth at the camshaft).</summary>
    /// <param name="crankTurns">2 on the camshaft, 1 on the crankshaft.</param>
    public static double DegreesPerTooth(int teeth, double crankTurns) => Turn / teeth * crankTurns;

    /// <summary>What an angle turned at the camshaft is at the crank.</summary>
    public static double CrankDegrees(double camDegrees) => camDegrees * CrankTurnsOfCam;
}

using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Air;

/// <summary>The power of the question, where it was measured in air that is not the reference.</summary>
internal static class MeasuredPower
{
    /// <summary>Null unless both pressure and temperature of the measurement are given.</summary>
    public static CorrectedPower? Of(AirQuestion question)
    {
        if (question.Typed is not { MeasuredPressure: { } pressure, MeasuredTemperature: { } temperature })
        {
            return null;
        }

        var factor = PowerCorrection.Factor(Spread.Of(pressure), Spread.Of(temperature));
        var power = (question.PowerW * factor).In(SumText.Kilowatts, "0.0");
        var outside = factor.Expected is < PowerCorrection.LeastFactor or > PowerCorrection.GreatestFactor
            ? " That factor lies outside 0.93 … 1.07, within which the standard wants the measurement (from memory, not certain): measure again in other air." : "";
        return new CorrectedPower(
            factor.In(SumText.Ratio, "0.0000"), power,
            $"(99 kPa ÷ {SumText.Number(pressure.Expected / 1000, "0.##")} kPa)^1.2 × ({SumText.Number(temperature.Expected, "0.##")} K ÷ 298 K)^0.6 = {SumText.Number(factor.Expected, "0.0000")}: "
            + $"in the reference air of ISO 1585 (formula from memory) it is {power.Text}. The sums above take the power as typed; in denser air it burns more fuel.{outside}");
    }
}

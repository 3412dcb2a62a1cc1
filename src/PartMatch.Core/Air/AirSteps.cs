using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Air;

/// <summary>The sums of the air side for the pencil, with the expected figures.</summary>
internal static class AirSteps
{
    public static IReadOnlyList<WorkingStep> Of(
        AirQuestion question, AirInputs air, Spread displacement, double flowKgS, double powerW, Spread bmep, Spread? pistonSpeed)
    {
        var (manifold, kelvin) = (air.AmbientPa.Expected + question.BoostPa.Expected, air.ChargeK.Expected);
        var density = AirFlow.Density(manifold, kelvin);
        var (litres, speed) = (Number(displacement.Expected * 1000, "0.0000"), Number(question.SpeedPerMinute.Expected, "0.##"));
        var ratio = air.AirFuelRatio.Expected;
        var steps = new List<WorkingStep>
        {
            new("density of the air in the manifold", "absolute pressure ÷ (287.05 J/(kg·K) × temperature)",
                $"({Number(air.AmbientPa.Expected, "0")} Pa + {Number(question.BoostPa.Expected, "0")} Pa) ÷ (287.05 × {Number(kelvin, "0.00")} K)",
                    $"{Number(density, "0.0000")} kg/m³", "gas law, dry air"),
            new("air flow", "displacement × speed ÷ 2 × volumetric efficiency × density",
                $"{litres} L × {speed}/min ÷ 2 ÷ 60 s/min × {Number(air.VolumetricEfficiency.Expected, "0.00")} × {Number(density, "0.0000")} g/L",
                    $"{Number(flowKgS * 1000, "0.00")} g/s",
                "Heywood 1988, eq. 2.27 (from memory)"),
            new("power that this air carries", "air flow ÷ (air-fuel ratio × BSFC)",
                $"{Number(flowKgS * 3600, "0.00")} kg/h ÷ ({Number(ratio, "0.00")} × {InGramsPerKilowattHour(question.Bsfc.Expected)}) × 1000 g/kg",
                    In(Kilowatts, powerW, "0.0"),
                "the fuel side turned round: air for a kilowatt hour = air-fuel ratio × BSFC"),
            new("mean effective pressure of the goal", "power × 2 turns ÷ (displacement × speed)",
                $"{In(Kilowatts, question.PowerW.Expected, "0.##")} × 120 s/min × 10 ÷ ({litres} L × {speed}/min)", In(Bars, bmep.Expected, "0.0"),
                    "definition; kW × s ÷ L is 10 bar"),
        };
        if (pistonSpeed is { } metres && question.StrokeM is { } stroke)
        {
            steps.Add(new("mean piston speed at the goal", "2 × stroke × speed",
                $"2 × {Number(stroke.Expected * 1000, "0.00")} mm × {speed}/min ÷ 60 s/min ÷ 1000 mm/m",
                $"{Number(metres.Expected, "0.0")} m/s", "definition"));
        }

        return steps;
    }
}

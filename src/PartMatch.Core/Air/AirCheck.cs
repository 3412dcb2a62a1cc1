using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Air;

/// <summary>Keeps a goal honest: what air the engine breathes, and the power that this air can carry.</summary>
/// <remarks>air flow = displacement × speed ÷ 2 × volumetric efficiency × density in the manifold; power = air flow ÷ (air-fuel ratio × consumption).</remarks>
internal static class AirCheck
{
    public static AirSide Check(AirQuestion question)
    {
        var air = AirInputs.Of(question);
        var yardsticks = Yardsticks.Of(question);
        if (question.DisplacementM3 is not { } displacement)
        {
            return new AirSide(
                GoalStanding.NotKnown, "Not known: the displacement of this variant is not recorded; give displacement= to see the goal from the air.",
                    yardsticks, air.Assumed, [])
            {
                Corrected = MeasuredPower.Of(question),
            };
        }

        SumInput[] inputs =
        [
            new("displacement", displacement), new("speed", question.SpeedPerMinute), new("volumetric efficiency", air.VolumetricEfficiency),
            new("ambient pressure", air.AmbientPa), new("boost", question.BoostPa), new("charge temperature", air.ChargeK),
                new("air-fuel ratio", air.AirFuelRatio), new("consumption", question.Bsfc),
        ];
        static double Flow(double[] of) => AirFlow.Mass(of[0], of[1], of[2], AirFlow.Density(of[3] + of[4], of[5]));
        var flow = SumRange.Of(inputs, Flow);
        var power = SumRange.Of(inputs, of => Flow(of) / (of[6] * of[7]));
        var bmep = EngineLoad.Bmep(question.PowerW, displacement, question.SpeedPerMinute);
        var isPlausible = question.Bsfc.Expected >= SpecificConsumption.ImplausibleBelow(question.Fuel);
        var standing = question.PowerW.Expected > power.High ? GoalStanding.Unlikely : question.PowerW.Expected > power.Expected && question.AlreadyDone is null
            ? GoalStanding.Ambitious
            : GoalStanding.Ordinary;
        // Little fuel makes much power of the same air: what no engine is expected to reach confirms no goal.
        standing = isPlausible || standing == GoalStanding.Unlikely ? standing : GoalStanding.NotKnown;
        var pistonSpeed = question.StrokeM is { } stroke ? EngineLoad.PistonSpeed(stroke, question.SpeedPerMinute) : (Spread?)null;
        return new AirSide(standing, InWords(standing, question, power), yardsticks, air.Assumed,
            AirSteps.Of(question, air, displacement, flow.Expected, power.Expected, bmep, pistonSpeed))
        {
            AirFlow = flow.In(UnitTable.Get("g/s"), "0.0"),
            Power = power.In(SumText.Kilowatts, "0"),
            Bmep = bmep.In(SumText.Bars, "0.0"),
            PistonSpeed = pistonSpeed is { } speed ? Yardsticks.InMetresPerSecond(speed) : null,
            Corrected = MeasuredPower.Of(question),
            Warnings = [.. AirWarnings.Of(question, standing, power, bmep, pistonSpeed)],
        };
    }

    private static string InWords(GoalStanding standing, AirQuestion question, Spread airW)
    {
        var carries = $"the air carries {airW.In(SumText.Kilowatts, "0").Text}, the goal is {question.PowerW.In(SumText.Kilowatts, "0").Text}";
        return standing switch
        {
            GoalStanding.Ordinary when question.PowerW.Expected > airW.Expected =>
                $"Within what is recorded of this variant as built, {question.AlreadyDone}, though the expected figures carry less: {carries}.",
            GoalStanding.Ordinary => $"Within what the expected figures carry: {carries}.",
            GoalStanding.Ambitious => $"Ambitious: {carries}; it takes better figures than expected.",
            GoalStanding.NotKnown =>
                $"Not known: {carries}, but only with a consumption of {SumText.InGramsPerKilowattHour(question.Bsfc.Expected)}, "
                + "which no engine of this sort is expected to reach.",
            _ => $"Unlikely: {carries}; not even the best of all the ranges reaches it.",
        };
    }
}

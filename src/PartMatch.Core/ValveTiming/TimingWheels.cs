using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>What a tooth is worth on each camshaft, and which way advance is.</summary>
internal static class TimingWheels
{
    public static IEnumerable<WheelTooth> Of(TimingSetting setting)
    {
        var direction = Direction(LookedUp.FindWord(setting.Facts, setting.Question.Variant, "camshaft-turns"));
        LobeSetting[] lobes = setting.IsOneCamshaft ? [setting.Intake] : [setting.Intake, setting.Exhaust];
        return lobes.Where(lobe => lobe.WheelTeeth is not null).Select(lobe => new WheelTooth(
            setting.IsOneCamshaft ? "all" : TimingText.Code(lobe.Valve), lobe.WheelTeeth ?? 0,
            GeometryText.RangeInDegrees(Spread.Exactly(lobe.PerTooth ?? 0)) with { Text = $"{GeometryText.InDegrees(lobe.PerTooth ?? 0)} of the crank" },
                direction));
    }

    private static string Direction(string? turns) => "Advanced = the wheel stands further on in its own direction of rotation while the crankshaft stands "
        + "still. " + turns switch
        {
            "against-crank" => "Here the camshaft turns against the crankshaft: seen from one and the same end, anticlockwise where the crankshaft turns "
            + "clockwise.",
            "with-crank" => "Here the camshaft turns with the crankshaft: seen from one and the same end, clockwise where the crankshaft turns clockwise.",
            _ => "Which way this camshaft turns is not recorded: a chain or belt turns it with the crankshaft, a pair of gears against it and each further gear "
                + "round again, all seen from one and the same end.",
        };
}

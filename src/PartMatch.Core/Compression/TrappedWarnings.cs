using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>Flags about what is trapped. None is a verdict on knock.</summary>
internal static class TrappedWarnings
{
    // Late-closing engines are described as closing after 20 to 30 % of the compression stroke; encyclopaedic, secondary.
    private const double PublishedLateShare = 0.20;
    private const double SameRatio = 0.005;

    public static IEnumerable<SumWarning> Of(string variant, Spread? trapped, Spread? closes, SliderCrank crank, IReadOnlyList<VariantYardstick> variants)
    {
        if (trapped is not { } ratio || closes is not { } closing)
        {
            yield break;
        }

        if (closing is { Low: < 0, High: > 0 })
        {
            yield return new SumWarning("closing-over-bottom",
                $"The closing, {TimingText.IntakeCloses(closing).Text}, reaches over bottom dead centre, where most is trapped: the high figure is the whole "
                + "compression ratio, and the expected one need not lie in the middle.");
        }

        var lost = 1 - TrappedCompression.ShareEnclosed(crank, closing.Expected);
        if (closing.Expected > 0 && lost > PublishedLateShare)
        {
            yield return new SumWarning("closes-late",
                $"Intake closes {TimingText.IntakeCloses(closing).Text}: {SumText.InPercent(lost, "0")} of the stroke has passed. Engines built to close late "
                + "are described as letting 20 … 30 % pass (encyclopaedic, "
                + "secondary source). Less is trapped at low speed, and starting suffers: measure cranking pressure.");
        }

        foreach (var warning in AgainstFamily(variant, ratio, variants))
        {
            yield return warning;
        }
    }

    private static IEnumerable<SumWarning> AgainstFamily(string variant, Spread trapped, IReadOnlyList<VariantYardstick> variants)
    {
        var alike = variants.Where(one => one.Charge == SameCharge.Yes && one.Trapped is not null).OrderBy(one => one.TrappedExpected).ToList();
        if (alike.Count == 0)
        {
            yield break;
        }

        var (least, most) = (alike[0], alike[^1]);
        var asked = variants.FirstOrDefault(one => one.IsAsked)?.Name ?? variant;
        string Of(VariantYardstick one, string which) =>
            alike.Count > 1 ? $"{one.Name}, the {which} of the family's own variants on the fuel and boost of {asked}"
            : $"{one.Name} as built, the only variant of the family on that fuel and boost";
        if (trapped.Expected > most.TrappedExpected + SameRatio && trapped.Low > most.Trapped?.High)
        {
            yield return new SumWarning("trapped-above-family",
                $"Trapped compression {RangeOfRatio(trapped).Text} is above {most.Trapped?.Text} of {Of(most, "highest")}; "
                + $"its end-of-compression pressure is {most.EndOfCompression?.Text} times that one's. Geometry does not predict knock: it hangs on fuel, "
                    + "heat, mixture, ignition and shape too. Measure, with the ignition set back first.");
        }

        if (trapped.Expected < least.TrappedExpected - SameRatio && trapped.High < least.Trapped?.Low)
        {
            yield return new SumWarning("trapped-below-family",
                $"Trapped compression {RangeOfRatio(trapped).Text} is below {least.Trapped?.Text} of {Of(least, "lowest")}: less is enclosed "
                + "when the valve closes. What that does to torque hangs on speed, ports and pipes, which geometry does not see. Measure cranking pressure and "
                + "compare.");
        }
    }
}

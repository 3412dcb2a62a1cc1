using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Tightening.TighteningText;

namespace PartMatch.Core.Tightening;

/// <summary>Flags: the number, what is usual and who says so, and that it wants measuring. None says what would be right.</summary>
internal static class TighteningWarnings
{
    private const double UsualShare = 0.75;

    private const string Usual =
        "usual is about 75 % of it in joints that are opened again and 90 % in those that are not "
        + "(Shigley, Mechanical Engineering Design; 75 % quoted second-hand, 90 % from memory)";

    private const string Measure =
        "Read the thread, the class on the head and the state of the threads again, and measure: how much longer the bolt becomes, "
        + "or a load cell under the head.";

    public static SumWarning SingleUseUnknown { get; } = new(
        "single-use-not-recorded",
        "Nobody says whether it is renewed once it was undone: where tightening stretches it for good, nothing here holds. "
        + "Look for it in the maker's document, and measure its length beside a new one.");

    public static SumWarning SourcesDisagree(string says) => new(
        "sources-disagree",
        $"The sources do not end in the same turn on the same engines: {says}. Nothing is averaged: see which of them speaks of this fastener on this engine.");

    public static IEnumerable<SumWarning> Of(
        Bolt bolt, QuantityRange torque, IReadOnlyList<(string Words, bool IsTold, PreloadSum Sum)> states, bool isLubricationUnknown)
    {
        foreach (var (words, isTold, sum) in states)
        {
            var (share, ultimate) = (sum.ShareOfProof, sum.ShareOfUltimate);
            if (ultimate.Expected > 1)
            {
                yield return new SumWarning(
                    isTold ? "breaks" : "breaks-if",
                    $"{(isTold ? "" : "If the threads are otherwise: ")}{words}, {torque.Text} would pull more than the {InKilonewtons(sum.Loads.Ultimate.Expected)} "
                    + $"that break the bolt at the least: it breaks before. Read the torque and its unit again. {Measure}");
            }
            else if (share.Expected > 1)
            {
                var breaks = $"{Share(ultimate.Expected)} of the least load that breaks it";
                yield return new SumWarning(
                    isTold ? "above-proof" : "above-proof-if",
                    $"{(isTold ? "" : "If the threads are otherwise: ")}{words}, {torque.Text} pulls {InKilonewtons(sum.Preload.Expected)}, "
                    + $"{Share(share.Expected)} of the proof load and {breaks}: the bolt stays longer than it was; {Usual}. {Measure}");
            }
            else if (isTold && share.High > 1)
            {
                yield return new SumWarning(
                    "may-pass-proof",
                    $"{words}, {torque.Text} is expected to pull {Share(share.Expected)} of the proof load, and up to {Share(share.High)} "
                    + $"where everything adds up; {Usual}. {Measure}");
            }
            else if (isTold && share.High < UsualShare)
            {
                yield return new SumWarning(
                    "below-usual",
                    $"{words}, {torque.Text} pulls {Share(share.Low)} to {Share(share.High)} of the proof load; {Usual}. "
                    + "A joint that is held too weakly works itself loose; but less can be meant, for a soft joint "
                    + "or for the thread that the bolt goes into, of which "
                    + $"nothing is said here: this is no reason to tighten further than the maker says. {Measure}");
            }
        }

        if (bolt.Class is null)
        {
            yield return new SumWarning(
                "class-not-recorded",
                "The property class is not known: the shares are over 8.8, 10.9 and 12.9, of which 10.9 is expected. "
                + $"Where it is none of them nothing here holds. {Measure}");
        }

        if (isLubricationUnknown)
        {
            yield return new SumWarning(
                "threads-not-recorded",
                $"Nobody says whether the torque is for dry or oiled threads: the nut factor is taken from 0.16 to 0.30, and its scatter beside it. {Measure}");
        }
    }
}

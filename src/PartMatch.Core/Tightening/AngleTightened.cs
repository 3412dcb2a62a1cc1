using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Tightening;

/// <summary>Fasteners of which a torque says nothing: turned on by an angle, or stretched for good.</summary>
internal static class AngleTightened
{
    private const string Code = "angle-tightened";

    private const string ByAngle =
        "It is turned on by an angle: the preload there comes from the angle, not from the torque, and the sums say nothing about it. "
        + "The torque before the angle only brings the faces together, so that the angle counts from the same start on every bolt.";

    private const string ByStretch =
        "It is stretched for good: the preload there comes from how far it is drawn, not from the torque, and the sums say nothing about it.";

    /// <summary>Why one source's passes are not judged by torque; null where they can be.</summary>
    public static NotJudged? Of(IReadOnlyList<TorquePass> passes) =>
        passes.Any(pass => pass.Turn.Unit.Dimension == Dimension.Angle) ? new NotJudged(Code, ByAngle)
        : passes.Any(pass => pass.SingleUse == SingleUse.Stretch) ? new NotJudged(Code, ByStretch)
        : null;

    /// <summary>A typed torque for such a fastener, or with an angle typed beside it.</summary>
    public static SumRefused? Refuse(TighteningQuestion question, IReadOnlyList<NotJudged> recorded)
    {
        if (question.Angle is { } angle)
        {
            return new SumRefused(
                Code, "angle", ByAngle, angle.Text, "a fastener tightened by torque alone", "follow the maker's document for it, pass by pass");
        }

        return recorded.FirstOrDefault(reason => reason.Code == Code) is { } angled
            ? new SumRefused(
                Code, "torque", angled.Reason, question.Torque?.Text ?? "nothing", "a fastener that is recorded with a torque alone",
                "leave the torque out to see its record")
            : null;
    }
}

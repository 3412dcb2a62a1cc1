using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Tightening;

/// <summary>A bolt that the sums can take.</summary>
internal sealed record Bolt(MetricThread Thread, PropertyClass? Class, BoltLoads Loads)
{
    private const string ThreadFeature = "thread";
    private const string ClassFeature = "strength";

    public BoltShown Shown() => new(
        Thread.Text, Class?.Code, Spread.Exactly(Thread.StressAreaM2).In(TighteningText.SquareMillimetres, "0.00"),
        Loads.Proof.In(TighteningText.Kilonewtons, "0.0"), Loads.Ultimate.In(TighteningText.Kilonewtons, "0.0"));

    /// <summary>From what is typed, else from what is recorded of the parts; a bolt, or why there is none.</summary>
    /// <param name="parts">The parts that sit there; empty where the question names no place.</param>
    public static (Bolt? Bolt, BoltUnknown? Unknown) Find(TighteningQuestion question, IReadOnlyList<Part> parts)
    {
        if (question is { Thread: null, Place: { Position.Role: not Roles.Fastener } place })
        {
            return (null, BoltUnknown.NotAFastener(place));
        }

        var written = question.Thread ?? Word(parts, ThreadFeature);
        if (written is null)
        {
            return (null, BoltUnknown.Thread(parts, ThreadFeature));
        }

        if (MetricThread.Find(written) is not { } thread)
        {
            return (null, BoltUnknown.NotMetric(written));
        }

        var known = question.Class ?? (Word(parts, ClassFeature) is { } stamped ? PropertyClass.Find(stamped) : null);
        return known is null && Word(parts, ClassFeature) is { } other
            ? (null, BoltUnknown.Class(other))
            : (new Bolt(thread, known, BoltLoads.Of(thread, known)), null);
    }

    /// <summary>The one word that all parts have there; null where it is not recorded, disputed, or not the same of all.</summary>
    private static string? Word(IReadOnlyList<Part> parts, string feature)
    {
        var words = parts.Select(part => ValueSelection.Of(part, feature) is StatedChoices { Choices: [var word] } ? word : null).Distinct().ToList();
        return words is [{ } one] ? one : null;
    }
}

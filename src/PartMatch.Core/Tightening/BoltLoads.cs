using System.Globalization;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Tightening.TighteningText;

namespace PartMatch.Core.Tightening;

/// <summary>What a bolt carries: the load it takes without staying longer, and the least load that breaks it, N.</summary>
/// <param name="Proof">A range over the classes it could be of where its class is not known.</param>
internal sealed record BoltLoads(Spread Proof, Spread Ultimate, IReadOnlyList<WorkingStep> Working)
{
    private const string Printed = "ISO 898-1, tables of proof and ultimate loads, coarse thread: the printed load counts, rounded as it is";

    // ISO 898-1, coarse thread, N: the class, the diameter in mm, the proof load, the least ultimate load.
    private static readonly (string Class, decimal DiameterMm, double Proof, double Ultimate)[] _printed =
    [
        ("8.8", 6, 11_600, 16_100), ("8.8", 8, 21_200, 29_200), ("8.8", 10, 33_700, 46_400), ("8.8", 12, 48_900, 67_400),
        ("10.9", 6, 16_700, 20_900), ("10.9", 8, 30_400, 38_100), ("10.9", 10, 48_100, 60_300), ("10.9", 12, 70_000, 87_700),
        ("12.9", 6, 19_500, 24_500), ("12.9", 8, 35_500, 44_600), ("12.9", 10, 56_300, 70_800), ("12.9", 12, 81_800, 103_000),
    ];

    /// <param name="known">Null where the class is not known: then any of those that the sums know, the middle one expected.</param>
    public static BoltLoads Of(MetricThread thread, PropertyClass? known)
    {
        var classes = known is null ? PropertyClass.All : [known];
        var each = classes.Select(one => (Class: one, Loads: OfClass(thread, one))).ToList();
        var (low, expected, high) = (each[0].Loads, each[each.Count / 2].Loads, each[^1].Loads);
        return new BoltLoads(
            new Spread(low.Proof, expected.Proof, high.Proof),
            new Spread(low.Ultimate, expected.Ultimate, high.Ultimate),
            [AreaStep(thread), .. each.SelectMany(one => Steps(thread, one.Class, one.Loads))]);
    }

    private static (double Proof, double Ultimate, bool IsPrinted) OfClass(MetricThread thread, PropertyClass known)
    {
        var strength = known.For(thread);
        return thread.IsCoarse && Array.Find(_printed, row => row.Class == known.Code && row.DiameterMm == thread.DiameterMm) is { Proof: > 0 } row
            ? (row.Proof, row.Ultimate, true)
            : (thread.StressAreaM2 * strength.ProofPa, thread.StressAreaM2 * strength.UltimatePa, false);
    }

    private static WorkingStep AreaStep(MetricThread thread) => new(
        "stress area", "π/4 × (d − 0.9382 × P)²",
        string.Create(CultureInfo.InvariantCulture, $"π/4 × ({thread.DiameterMm} mm − 0.9382 × {thread.PitchMm} mm)²"), Area(thread.StressAreaM2), "ISO 898-1");

    private static IEnumerable<WorkingStep> Steps(MetricThread thread, PropertyClass known, (double Proof, double Ultimate, bool IsPrinted) loads)
    {
        var strength = known.For(thread);
        yield return Step("proof load", "proof stress", strength.ProofPa, loads.Proof);
        yield return Step("least breaking load", "least tensile strength", strength.UltimatePa, loads.Ultimate);

        WorkingStep Step(string what, string stress, double pascals, double load) => loads.IsPrinted
            ? new($"{what}, class {known.Code}", "as printed for this thread and class", $"{thread.Text}, class {known.Code}", InKilonewtons(load), Printed)
            : new(
                $"{what}, class {known.Code}", $"stress area × {stress}", $"{Area(thread.StressAreaM2)} × {Stress(pascals)}", InKilonewtons(load),
                $"{strength.Source}; no printed load for this thread is held here, so it is computed");
    }
}

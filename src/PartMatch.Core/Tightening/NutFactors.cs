using PartMatch.Core.Catalogue;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Tightening;

/// <summary>Nut factors K of T = K·d·F: how much of a torque friction eats, by the state of threads and head.</summary>
public static class NutFactors
{
    private const string Table = "Shigley, Mechanical Engineering Design, table 8-15 (quoted second-hand)";

    public static Figure Of(Lubrication lubrication) => lubrication switch
    {
        Lubrication.Dry => Exactly(0.30, $"{Table}: not plated, black finish; zinc-plated it is 0.20 dry, and pulls half as much again at the same torque"),
        Lubrication.Oiled => Exactly(0.18, $"{Table}: lubricated (0.18 from memory, high confidence)"),
        Lubrication.ZincPlated => Exactly(0.20, $"{Table}: zinc-plated"),
        Lubrication.CadmiumPlated => Exactly(0.16, $"{Table}: cadmium-plated"),
        _ => new Figure(
            0.10, 0.20, 0.30,
            "no factor is held for this state: over the series of Mechanical Fastening, Joining, and Assembly, p. 85, 0.10 to 0.30, its middle expected"),
    };

    /// <summary>Where nobody recorded how the threads are to be: whatever the table has.</summary>
    public static Figure OfUnknown { get; } = new(0.16, 0.20, 0.30, $"not recorded: over the states of {Table}, 0.16 to 0.30; 0.20 stands for the expected one because it lies between oiled and dry, for no other reason");

    private static Figure Exactly(double factor, string source) => new(factor, factor, factor, source);
}

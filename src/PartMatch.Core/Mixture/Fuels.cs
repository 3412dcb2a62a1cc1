using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Mixture;

/// <summary>The fuels the sums know. Blends of petrol and ethanol are computed by volume from the two; their density follows their standard.</summary>
/// <remarks>
/// Blend figures: ethanol 790 kg/m3, 26.9 MJ/kg, 9.0; petrol 745 kg/m3, 43.0 MJ/kg, 14.7; mass fraction of ethanol =
/// 790 x ÷ (790 x + 745 (1 − x)) at volume fraction x. x = 0.85 gives 29.20 MJ/kg and 9.814, x = 0.51 gives 34.55 MJ/kg and 11.71.
/// </remarks>
public static class Fuels
{
    private const string En228 = "EN 228:2012 table 1: 720 … 775 kg/m³ at 15 °C; expected: DOE Alternative Fuels Data Center, 116 090 Btu/gal ÷ 18 676 Btu/lb";
    private const string Afdc = "DOE Alternative Fuels Data Center, properties of fuels (14.7 is marked calculated there); low: 14.6 for CH1.87, Heywood 1988 eq. 3.6";
    private const string Blend = "computed by volume from petrol and ethanol";
    private const string Petrol43 =
        "43 MJ/kg, round figure of the textbooks (from memory, Heywood 1988 table D.4, not certain); high: DOE Alternative Fuels Data Center, 18 676 Btu/lb";
    private const string D5798 = "ASTM D5798: 51 … 83 % ethanol by volume; sized on 85 % as its name says, a little richer than the standard allows; " + Blend;

    /// <summary>The petrol that published consumption figures stand for; other fuels are scaled from it at equal efficiency.</summary>
    public static Fuel Petrol { get; } = new(
        "petrol-e0", "petrol without ethanol", new Figure(720, 745, 775, En228), new Figure(14.6, 14.7, 14.7, Afdc), new Figure(43.0e6, 43.0e6, 43.44e6, Petrol43));

    public static Fuel Ethanol { get; } = new(
        "ethanol", "ethanol",
        new Figure(786.0, 790.2, 794.3, "25 … 20 … 15 °C: Perry's Chemical Engineers' Handbook table 2-32, coefficients evaluated"),
        new Figure(9.0, 9.0, 9.0, "DOE Alternative Fuels Data Center; Heywood 1988 eq. 3.6 gives 9.00"),
        new Figure(26.9e6, 26.9e6, 26.947e6, "Heywood 1988 table D.4 (from memory); high: DOE Alternative Fuels Data Center, 11 585 Btu/lb"), IsAlcohol: true)
    {
        Expansion = 0.001045,
        ExpansionSource = "from its densities at 15 and 25 °C",
        DensityAt15 = Spread.Exactly(794.3),
    };

    /// <summary>All of them, petrol first, then by share of alcohol.</summary>
    public static IReadOnlyList<Fuel> All { get; } =
    [
        Petrol,
        new("petrol-e5", "petrol with up to 5 % ethanol", new Figure(720, 747, 775, En228), new Figure(14.4, 14.4, 14.7, Blend), new Figure(42.15e6, 42.15e6, 43.0e6, Blend)),
        new("petrol-e10", "petrol with up to 10 % ethanol", new Figure(720, 750, 775, En228), new Figure(14.1, 14.1, 14.7, Blend), new Figure(41.3e6, 41.3e6, 43.0e6, Blend)),
        new("e85", "E85",
            new Figure(760, 783, 800, "EN 15293: 760 … 800 kg/m³ at 15 °C (from memory, not certain); expected: " + Blend + " at 85 %"),
            new Figure(9.81, 9.81, 11.71, D5798), new Figure(29.20e6, 29.20e6, 34.55e6, D5798), IsAlcohol: true)
        {
            Expansion = 0.00107,
            ExpansionSource = "by volume from ethanol and petrol at 85 %",
        },
        Ethanol,
        new("methanol", "methanol",
            new Figure(787.3, 792.0, 796.8, "25 … 20 … 15 °C: Perry's Chemical Engineers' Handbook table 2-32, coefficients evaluated"),
            new Figure(6.47, 6.47, 6.47, "Heywood 1988 eq. 3.6, computed"),
            new Figure(20.0e6, 20.0e6, 20.09e6, "Heywood 1988 table D.4 (from memory); high: DOE Alternative Fuels Data Center, 8 637 Btu/lb"), IsAlcohol: true)
        {
            Expansion = 0.001192,
            ExpansionSource = "from its densities at 15 and 25 °C",
            DensityAt15 = Spread.Exactly(796.8),
        },
    ];

    public static Fuel? Find(string code) => All.FirstOrDefault(fuel => fuel.Code == code);
}

using PartMatch.Core.Measures;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Tightening;

/// <summary>Numbers of tightening in units of the trade: what goes in is in the base unit.</summary>
internal static class TighteningText
{
    public static readonly Unit Kilonewtons = UnitTable.Get("kN");
    public static readonly Unit NewtonMetres = UnitTable.Get("N·m");
    public static readonly Unit SquareMillimetres = UnitTable.Get("mm2");
    public static readonly Unit Megapascals = UnitTable.Get("MPa");
    public static readonly Unit Ratio = UnitTable.Get("1");

    public const string FactorFormat = "0.00#";

    public static string InKilonewtons(double newtons) => In(Kilonewtons, newtons, "0.00");

    public static string InNewtonMetres(double newtonMetres) => In(NewtonMetres, newtonMetres, "0.##");

    public static string Area(double squareMetres) => In(SquareMillimetres, squareMetres, "0.00");

    public static string Stress(double pascals) => In(Megapascals, pascals, "0");

    public static string Share(double share) => InPercent(share, "0");
}

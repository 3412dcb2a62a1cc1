namespace PartMatch.Core.Catalogue;

/// <summary>What the sums use a position for; the closed list of the column <c>role</c>.</summary>
public static class Roles
{
    public const string Injector = "injector";
    public const string FuelPump = "fuel-pump";
    public const string FuelRegulator = "fuel-regulator";
    public const string IntakeCamshaft = "intake-camshaft";
    public const string ExhaustCamshaft = "exhaust-camshaft";
    public const string Piston = "piston";
    public const string Head = "head";
    public const string HeadGasket = "head-gasket";
    public const string CamSprocket = "cam-sprocket";
    public const string Fastener = "fastener";

    /// <summary>Every role, in ordinal order.</summary>
    public static IReadOnlyList<string> All { get; } =
        [CamSprocket, ExhaustCamshaft, Fastener, FuelPump, FuelRegulator, Head, HeadGasket, Injector, IntakeCamshaft, Piston];
}

namespace PartMatch.Core.Injectors;

/// <summary>How the rail is fed, which decides what boost does to the pressure across an injector.</summary>
public enum FuelSupply
{
    /// <summary>Return rail, regulator referenced to the manifold: the pressure given is the difference it holds.</summary>
    ReturnManifold,

    /// <summary>Return rail, regulator vented to ambient: the pressure given is the rail's gauge pressure.</summary>
    ReturnAmbient,

    /// <summary>Fixed regulator in the tank: the pressure given is the rail's gauge pressure, after the loss in the line.</summary>
    ReturnlessFixed,

    /// <summary>Rail pressure set by a control unit: the pressure given, or that of a table over boost, is the rail's gauge pressure at the goal.</summary>
    ReturnlessControlled,
}

/// <summary>What pushes the fuel through an injector.</summary>
public static class PressureAcross
{
    /// <summary>Rail minus manifold, Pa; not positive where the manifold pushes back as hard as the rail pushes.</summary>
    /// <param name="pressurePa">As <see cref="FuelSupply"/> says for each supply.</param>
    /// <param name="boostPa">Manifold gauge pressure; negative under vacuum.</param>
    public static decimal Of(FuelSupply supply, decimal pressurePa, decimal boostPa) =>
        supply == FuelSupply.ReturnManifold ? pressurePa : pressurePa - boostPa;

    /// <summary>Gauge pressure of the rail, Pa: what the pump has to overcome, apart from the line.</summary>
    public static decimal RailGaugeOf(FuelSupply supply, decimal pressurePa, decimal boostPa) =>
        supply == FuelSupply.ReturnManifold ? pressurePa + boostPa : pressurePa;
}

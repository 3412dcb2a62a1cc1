namespace PartMatch.Core.Measures;

/// <summary>What a unit measures. Two quantities are compared only within one dimension.</summary>
public enum Dimension
{
    Ratio,
    Length,
    Area,
    Volume,
    Mass,
    Time,
    Angle,
    Temperature,
    Pressure,
    Force,
    Torque,
    Power,
    Speed,
    VolumeFlow,
    MassFlow,
    Density,
    SpecificConsumption,
    SpecificEnergy,
    Resistance,
    Voltage,
    Current,
    Frequency,
    Inductance,
    Stiffness,
}

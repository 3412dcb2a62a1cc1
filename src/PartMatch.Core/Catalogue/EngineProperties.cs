using PartMatch.Core.Measures;

namespace PartMatch.Core.Catalogue;

/// <summary>What a property of an engine must be for the sums to read it.</summary>
/// <param name="Dimension">Of a quantity; null for counts and words.</param>
/// <param name="Words">The allowed words; null when it is not a word. Both null: a count.</param>
public sealed record EngineProperty(Dimension? Dimension, IReadOnlyList<string>? Words);

/// <summary>The engine facts that the sums read. A book may record others; of those nothing is demanded.</summary>
public static class EngineProperties
{
    private static readonly EngineProperty _count = new(null, null);

    private static readonly Dictionary<string, EngineProperty> _known = new(StringComparer.Ordinal)
    {
        ["cylinders"] = _count,
        ["injectors-per-cylinder"] = _count,
        ["shots-per-cycle"] = _count,
        ["bore"] = Quantity(Dimension.Length),
        ["stroke"] = Quantity(Dimension.Length),
        ["rod-length"] = Quantity(Dimension.Length),
        ["deck-height"] = Quantity(Dimension.Length),
        ["compression-ratio"] = Quantity(Dimension.Ratio),
        ["displacement"] = Quantity(Dimension.Volume),
        ["rated-power"] = Quantity(Dimension.Power),
        ["rated-speed"] = Quantity(Dimension.Speed),
        ["redline"] = Quantity(Dimension.Speed),
        ["rated-torque"] = Quantity(Dimension.Torque),
        ["boost"] = Quantity(Dimension.Pressure),
        ["reference-pressure"] = Quantity(Dimension.Pressure),
        ["rail-pressure"] = Quantity(Dimension.Pressure),
        ["idle-speed"] = Quantity(Dimension.Speed),
        ["supply"] = new(null, Codes.All<Injectors.FuelSupply>()),
        ["fuel"] = new(null, [.. Mixture.Fuels.All.Select(fuel => fuel.Code)]),
        ["camshaft-turns"] = new(null, ["against-crank", "with-crank"]),
        ["induction"] = new(null, ["boosted", "natural"]),
        ["fuel-system"] = new(null, ["carburetted", "direct-injected", "port-injected"]),
    };

    public static EngineProperty? Find(string property) => _known.GetValueOrDefault(property);

    private static EngineProperty Quantity(Dimension dimension) => new(dimension, null);
}

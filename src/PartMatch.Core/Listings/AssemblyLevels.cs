namespace PartMatch.Core.Listings;

/// <summary>How much of an engine a seller sells, and what is then still missing.</summary>
/// <remarks>Common practice, no source: sellers draw the lines differently, so what is missing is a list to ask about and never a promise.</remarks>
internal static class AssemblyLevels
{
    private static readonly (AssemblyLevel Level, string Adds)[] _steps =
    [
        (AssemblyLevel.Bare, "the bare block"),
        (AssemblyLevel.Short, "crankshaft, connecting rods, pistons and rings"),
        (AssemblyLevel.Long, "cylinder head with valves, camshafts and their drive"),
        (AssemblyLevel.Complete, "manifolds, pumps, fuel rail and injectors, ignition, sensors and harness"),
        (AssemblyLevel.HeardRunning, "having been heard running before it came out"),
    ];

    /// <summary>In the trade's words.</summary>
    public static string Name(AssemblyLevel level) => level switch
    {
        AssemblyLevel.Bare => "bare block",
        AssemblyLevel.Short => "short engine",
        AssemblyLevel.Long => "long engine",
        AssemblyLevel.Complete => "complete engine",
        AssemblyLevel.HeardRunning => "complete engine, heard running",
        _ => "not stated",
    };

    /// <summary>What the sold level lacks of the needed one, lowest step first; empty where it is enough, or where it is not stated.</summary>
    public static IReadOnlyList<string> Missing(AssemblyLevel sold, AssemblyLevel needed) => sold == AssemblyLevel.NotStated
        ? []
        : [.. _steps.Where(step => step.Level > sold && step.Level <= needed).Select(step => step.Adds)];
}

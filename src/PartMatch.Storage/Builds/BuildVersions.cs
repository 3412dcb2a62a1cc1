using PartMatch.Core.Builds;

namespace PartMatch.Storage.Builds;

/// <summary>What made a version of a build.</summary>
public enum BuildAct
{
    Create,
    Edit,
    Delete,

    /// <summary>An earlier version is there again.</summary>
    Restore,
}

/// <summary>One version of a build, and who made it, when and why.</summary>
/// <param name="At">UTC.</param>
/// <param name="Restores">The version that it brought back; null for all other acts.</param>
public sealed record BuildSaved(string Build, int Version, BuildAct Act, string At, string? Who, string? Why, int? Restores);

/// <param name="Document">Null where this version deleted it.</param>
public sealed record BuildVersion(BuildSaved Saved, Build? Document);

/// <summary>How a change of a build ended; one of the nested cases. Only <see cref="Done"/> stored anything.</summary>
public abstract record BuildOutcome
{
    private BuildOutcome()
    {
    }

    public sealed record Done(BuildVersion Now) : BuildOutcome;

    /// <summary>What was sent is what is there.</summary>
    public sealed record Same(BuildVersion Now) : BuildOutcome;

    /// <summary>Another build has the code.</summary>
    public sealed record Taken(BuildVersion Present) : BuildOutcome;

    /// <summary>No build has ever had that code, or not that version.</summary>
    public sealed record Absent : BuildOutcome;

    /// <summary>Somebody else has changed or deleted it since.</summary>
    public sealed record Stale(BuildVersion Present) : BuildOutcome;
}

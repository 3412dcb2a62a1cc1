namespace PartMatch.Core.Fit;

/// <summary>What valve timing and compression are with the part, against the variant as built.</summary>
/// <param name="Text">One sentence.</param>
/// <param name="Changes">Each difference in a few words, both ways: earlier and later, rises and falls; empty where the sums see none.</param>
/// <param name="NotKnown">What could not be reckoned, and why.</param>
/// <param name="Link">The whole sum, where there is one.</param>
public sealed record EngineChange(string Text, IReadOnlyList<string> Changes, IReadOnlyList<string> NotKnown, string? Link)
{
    /// <summary>Where it is not the same on every engine that is meant: each stretch of build dates and serial numbers, earliest first. Else empty.</summary>
    public IReadOnlyList<EngineChangeOn> Spans { get; init; } = [];
}

/// <param name="When">In words: "serial before 41207".</param>
public sealed record EngineChangeOn(string When, string Text, IReadOnlyList<string> Changes, IReadOnlyList<string> NotKnown);

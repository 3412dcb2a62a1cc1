namespace PartMatch.Core.Fit;

/// <summary>What valve timing and compression are with the part, against the variant as built.</summary>
/// <param name="Text">One sentence.</param>
/// <param name="Changes">Each difference in a few words, both ways: earlier and later, rises and falls; empty where the sums see none.</param>
/// <param name="NotKnown">What could not be reckoned, and why.</param>
/// <param name="Link">The whole sum, where there is one.</param>
public sealed record EngineChange(string Text, IReadOnlyList<string> Changes, IReadOnlyList<string> NotKnown, string? Link);

namespace PartMatch.Core.Sums;

/// <summary>Something to know before relying on the answer.</summary>
public sealed record SumWarning(string Code, string Text);

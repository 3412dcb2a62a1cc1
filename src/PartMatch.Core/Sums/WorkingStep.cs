namespace PartMatch.Core.Sums;

/// <summary>One sum of the working.</summary>
/// <param name="With">The formula with the numbers put in.</param>
public sealed record WorkingStep(string What, string Formula, string With, string Result, string Source);

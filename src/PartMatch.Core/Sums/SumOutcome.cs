namespace PartMatch.Core.Sums;

/// <summary>How a question about sums ends: with the answer of its feature, or as <see cref="SumRefused"/>.</summary>
public abstract record SumOutcome;

/// <summary>There is no honest answer to the question as it stands.</summary>
/// <param name="Code">Names the reason; each is explained under the problem types.</param>
/// <param name="Field">The part of the question it hangs on, named as the query parameter.</param>
public sealed record SumRefused(string Code, string Field, string Reason, string Found, string Expected, string Mend) : SumOutcome;

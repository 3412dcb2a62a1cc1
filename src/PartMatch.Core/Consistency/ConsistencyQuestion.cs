namespace PartMatch.Core.Consistency;

/// <summary>What can the base find wrong or missing in a family by itself?</summary>
/// <param name="Variant">Only faults that concern this variant; null for the whole family.</param>
/// <param name="Sort">
/// Only this sort; null for every sort but <see cref="FaultSort.NearUnjudged"/>, which takes a ranking of every pair of numbers and is looked
/// for when it is asked for.
/// </param>
/// <param name="Limit">Faults listed, at least 1; the counts are over all.</param>
public sealed record ConsistencyQuestion(string? Variant = null, FaultSort? Sort = null, int Limit = ConsistencyQuestion.DefaultLimit)
{
    // Ours, no source: two sheets of paper, and as many as a page can show without becoming slow.
    public const int DefaultLimit = 100;

    public const int MaxLimit = 1000;
}

/// <summary>The question as the answer repeats it.</summary>
public sealed record ConsistencyAsked(string Family, string? Variant, FaultSort? Sort, int Limit);

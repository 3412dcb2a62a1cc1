using PartMatch.Storage.Books.Merge;

namespace PartMatch.Web.Books;

/// <summary>What a merge has done, or would do.</summary>
/// <param name="Change">Its number in the history; absent when nothing was different, or when it was only checked.</param>
/// <param name="Files">Those with rows that are added or changed, each with the first of these rows.</param>
public sealed record MergeAnswer(MergeAsked Asked, MergeResult Outcome, long? Change, MergeCounts Counts, IReadOnlyList<MergeFile> Files, string Permalink);

/// <param name="Decided">Were decisions sent?</param>
public sealed record MergeAsked(string Book, bool DryRun, bool Decided, string? Who, string? Why);

public enum MergeResult
{
    Merged,
    WouldMerge,
}

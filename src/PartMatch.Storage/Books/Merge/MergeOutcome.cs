using PartMatch.Storage.History;

namespace PartMatch.Storage.Books.Merge;

/// <summary>A cell about which two states of a book differ.</summary>
/// <param name="Here">What the base has; empty when nothing is recorded.</param>
/// <param name="There">What the other state has.</param>
public sealed record MergeConflict(string File, string Key, string Column, string Here, string There);

/// <summary>What a merge does to the rows of the base. Rows that only the base has stay as they are.</summary>
/// <param name="Added">Rows that only the other state has.</param>
/// <param name="Changed">Rows both have, of which the decisions took cells from there.</param>
/// <param name="Kept">Rows both have, of which the decisions kept all that is here.</param>
/// <param name="Same">Rows that are equal.</param>
public sealed record MergeCounts(int Added, int Changed, int Kept, int Same);

/// <summary>What a merge does to the rows of one file.</summary>
/// <param name="Rows">The first of those it adds or changes, in order of their keys, as the history tells them.</param>
public sealed record MergeFile(string File, int Added, int Changed, IReadOnlyList<RowTold> Rows);

/// <summary>How a merge ended; one of the nested cases. Only <see cref="Merged"/> stored anything.</summary>
public abstract record MergeOutcome
{
    private MergeOutcome()
    {
    }

    /// <param name="Change">Its number in the history; null when nothing was different.</param>
    /// <param name="Files">Those with rows that were added or changed, in ordinal order.</param>
    public sealed record Merged(long? Change, MergeCounts Counts, IReadOnlyList<MergeFile> Files) : MergeOutcome;

    /// <summary>A dry run found nothing against it.</summary>
    /// <param name="Files">Those with rows that would be added or changed, in ordinal order.</param>
    public sealed record Checked(MergeCounts Counts, IReadOnlyList<MergeFile> Files) : MergeOutcome;

    public sealed record NoBook(string Book) : MergeOutcome;

    /// <summary>The other state is of a book of another name.</summary>
    public sealed record OtherBook(string Found) : MergeOutcome;

    /// <summary>Cells differ that nobody has decided about.</summary>
    /// <param name="Conflicts">All of them, the decided ones too, in order of file, key and column.</param>
    /// <param name="Open">How many still wait for a decision.</param>
    /// <param name="Csv">The same as a table to fill in; what was decided stands in it.</param>
    public sealed record Undecided(IReadOnlyList<MergeConflict> Conflicts, int Open, byte[] Csv) : MergeOutcome;

    /// <summary>The other state, the decisions, or the book that would come of them have faults.</summary>
    public sealed record Refused(IReadOnlyList<ImportError> Errors, int Total) : MergeOutcome;

    /// <summary>Rows that were not touched would be wrong afterwards.</summary>
    public sealed record InUse(IReadOnlyList<BookUser> Users, int Total) : MergeOutcome;
}

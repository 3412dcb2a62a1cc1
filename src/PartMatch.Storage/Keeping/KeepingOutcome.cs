namespace PartMatch.Storage.Keeping;

/// <summary>What came of backing up, restoring or checking a base.</summary>
public abstract record KeepingOutcome;

/// <summary>The backup is on the disk and was found whole.</summary>
public sealed record BackedUp(string File, long Bytes, long Schema) : KeepingOutcome;

/// <summary>The base is what the backup was.</summary>
/// <param name="Kept">Where the base lies that was there before; null when there was none.</param>
public sealed record Restored(string Base, string? Kept, long Bytes, long Schema) : KeepingOutcome;

/// <summary>The check found nothing.</summary>
/// <param name="AreRowsChecked">False for a base of an older schema, whose rows this program can judge only once it has brought it up to date.</param>
public sealed record Sound(string Base, long Bytes, long Schema, long Books, bool AreRowsChecked) : KeepingOutcome;

/// <summary>The check found faults.</summary>
/// <param name="Faults">One sentence each, at most <see cref="BaseCheck.MaxFaults"/>.</param>
public sealed record Faulty(string Base, IReadOnlyList<string> Faults) : KeepingOutcome;

/// <summary>Not done; nothing was changed.</summary>
/// <param name="Sentence">What was found, what was expected, how to mend it.</param>
public sealed record KeepingRefused(KeepingRefusal Reason, string Sentence) : KeepingOutcome;

public enum KeepingRefusal
{
    /// <summary>The file to read is not there.</summary>
    NoFile,

    /// <summary>The file to write is there already.</summary>
    FileThere,

    /// <summary>The folder to write to is not there.</summary>
    NoFolder,

    /// <summary>No base of this program.</summary>
    NotOurs,

    /// <summary>Of a newer program.</summary>
    NewerSchema,

    /// <summary>Not whole.</summary>
    Damaged,

    /// <summary>A server has the base open.</summary>
    InUse,

    /// <summary>The disk or the database says no; the sentence says why.</summary>
    CannotBeDone,
}

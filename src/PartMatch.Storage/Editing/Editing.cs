namespace PartMatch.Storage.Editing;

/// <summary>Who changes something, and why, in their own words; null when they did not say.</summary>
public sealed record ChangeNote(string? Who = null, string? Why = null)
{
    public static ChangeNote None { get; } = new();
}

/// <summary>One row to add, to change or to remove.</summary>
/// <param name="Table">The file's name without its ending.</param>
/// <param name="Key">The key it has now; null to add a row.</param>
/// <param name="Version">The version that was seen; null to change it whatever it is by now.</param>
/// <param name="Row">Its cells by column, as they shall be; null to remove the row.</param>
public sealed record RowChange(string Table, string? Key, string? Version, IReadOnlyDictionary<string, string>? Row);

/// <summary>A row as it is in the base.</summary>
/// <param name="Book">The book it is in.</param>
/// <param name="Row">Cells by column; what is not recorded is left out.</param>
public sealed record RowSeen(string Book, string Table, string Key, string Version, IReadOnlyDictionary<string, string> Row);

/// <summary>A change that is in the history.</summary>
public sealed record ChangeSeen(long Change, string At, string? Who, string? Why);

/// <summary>A fault of one of the rows that were sent.</summary>
/// <param name="Row">Which of them, from 0.</param>
/// <param name="Column">Null when it is the row as a whole.</param>
public sealed record RowFault(int Row, string? Column, string Found, string Reason, string? Suggestion);

/// <summary>How an edit ended; one of the nested cases. Only <see cref="Done"/> stored anything.</summary>
public abstract record EditOutcome
{
    private EditOutcome()
    {
    }

    /// <summary>Stored, all of it.</summary>
    /// <param name="Rows">The rows that are there now, in the order sent; those removed are left out.</param>
    public sealed record Done(long Change, IReadOnlyList<RowSeen> Rows) : EditOutcome;

    /// <summary>Nothing would change: what was sent is what is there.</summary>
    public sealed record Same(IReadOnlyList<RowSeen> Rows) : EditOutcome;

    public sealed record NoBook(string Book) : EditOutcome;

    public sealed record Faulty(IReadOnlyList<RowFault> Faults) : EditOutcome;

    /// <summary>Somebody else has changed or removed the row meanwhile.</summary>
    /// <param name="Present">As it is now; null when it was removed.</param>
    /// <param name="Changed">The latest change of it, where the history has one.</param>
    public sealed record Stale(int Row, RowSeen? Present, ChangeSeen? Changed) : EditOutcome;

    /// <summary>Other rows would be wrong afterwards.</summary>
    public sealed record InUse(IReadOnlyList<Books.BookUser> Users, int Total) : EditOutcome;
}

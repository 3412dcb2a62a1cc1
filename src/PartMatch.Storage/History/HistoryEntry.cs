using PartMatch.Storage.Editing;

namespace PartMatch.Storage.History;

/// <summary>What a change was.</summary>
public enum Act
{
    /// <summary>Rows were added, changed or removed by hand.</summary>
    Edit,

    /// <summary>A whole book was brought in.</summary>
    Import,

    /// <summary>The rows of another state of the book were taken in.</summary>
    Merge,

    /// <summary>An earlier change was taken back.</summary>
    Undo,

    /// <summary>A reading of one item was made a value of its number.</summary>
    Promote,
}

/// <summary>One change, before it has a number.</summary>
/// <param name="Undoes">The change that it takes back; null for all other acts.</param>
internal sealed record HistoryEntry(string Book, ChangeNote Note, Act Act, DateTimeOffset At, long? Undoes = null);

using System.Globalization;
using FluentValidation.Results;
using PartMatch.Storage.Books;
using PartMatch.Storage.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Editing;

/// <summary>Says why a change was not made; nothing was stored.</summary>
internal static class EditProblems
{
    /// <summary>Most users that are listed.</summary>
    private const int MaxUsers = 100;

    public static Absent NoBook(string book) => new(new FieldError("book", book, "the name of a book of the base", "the books are listed at /api/books"));

    public static Absent NoTable(string table) => new(new FieldError(
        "table", table, $"one of {string.Join(", ", RowStore.Tables)}", Nearest.Find(table, [.. RowStore.Tables]) is { } near ? $"did you mean {near}?" : null));

    public static Absent NoRow(RowAsked asked) => new(new FieldError(
        "key", asked.Key, $"the key of a row of {asked.Table} in the book {asked.Book}", $"its rows are listed at {EditLinks.ToTable(asked.Book, asked.Table)}"));

    public static Stale VersionNeeded() => new(Problem.Of(
        "version-needed", new FieldError("If-Match", "nothing", "the version of the row that was seen, in quotes", "read the row again: its ETag is its version")));

    public static Refused Misshapen(ValidationResult result, bool inChanges) => new(Problem.Of(
        "bad-row", [.. result.Errors.Select(failure => ToError(failure, failure.CustomState as Mending ?? new Mending(failure.ErrorMessage), inChanges))]));

    /// <param name="inChanges">Are there several rows, so that each field is named with its row?</param>
    public static Refused Faulty(IReadOnlyList<RowFault> faults, bool inChanges) => new(Problem.Of(
        "bad-row", [.. faults.Select(fault => FieldError.OfCell(FieldOf(fault, inChanges), fault.Found, fault.Reason, fault.Suggestion))]));

    public static Clash InUse(IReadOnlyList<BookUser> users, int total, string mend) => new(
        Problem.Of("in-use", [.. users.Take(MaxUsers).Select(user => ToError(user, "users", mend))]) with
        {
            Detail = string.Create(
                CultureInfo.InvariantCulture,
                $"{total} {(total == 1 ? "row" : "rows")} would be wrong afterwards{(total > MaxUsers ? $", the first {MaxUsers} are listed" : "")}. Nothing was stored."),
        });

    /// <param name="yours">What was sent; null where the row was to be removed.</param>
    public static Stale Outdated(EditOutcome.Stale stale, string field, string? seen, IReadOnlyDictionary<string, string>? yours) => new(
        Problem.Of("stale", new FieldError(
            field, seen ?? "nothing",
            stale.Present is { } row ? $"\"{row.Version}\", the version there is now" : "a row that is still there",
            stale switch
            {
                { Present: not null } => "compare the two versions, then send yours again with the present version",
                { Changed: null } => "no row has this key, and the history tells of none that had: look it up among the rows of its table",
                _ => "somebody removed it: add it again if it shall be there",
            })) with
        {
            Present = stale.Present is { } present ? RowNow.Of(present) with { Changed = stale.Changed } : null,
            Removed = stale.Present is null ? stale.Changed : null,
            Yours = yours,
        });

    /// <summary>A row that stands in the way of a change, with its address.</summary>
    public static FieldError ToError(BookUser user, string field, string mend) => new(
        field, $"{user.Book}: {user.File} {user.Key}: {user.Uses}".TrimEnd(' ', ':'), $"no row that would be wrong afterwards: {user.Reason}", mend)
    {
        File = user.File,
        Row = user.Key.Length == 0 ? null : EditLinks.ToRow(user.Book, Path.GetFileNameWithoutExtension(user.File), user.Key),
    };

    private static FieldError ToError(ValidationFailure failure, Mending mending, bool inChanges)
    {
        var field = string.Join('.', failure.PropertyName.Split('.').Select(step => char.ToLowerInvariant(step[0]) + step[1..]));
        var named = inChanges ? field : field.Replace("rows[0].", "", StringComparison.Ordinal);
        return new FieldError(named, mending.Found ?? "nothing", mending.Expected, mending.Mend);
    }

    private static string FieldOf(RowFault fault, bool inChanges) => !inChanges
        ? fault.Column ?? "row"
        : string.Create(CultureInfo.InvariantCulture, $"rows[{fault.Row}]{(fault.Column is null ? "" : "." + fault.Column)}");
}

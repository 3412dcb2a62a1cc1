using System.Globalization;
using PartMatch.Storage.Books;
using PartMatch.Web.Http;

namespace PartMatch.Web.Books;

/// <summary>The faults of a parts book as a problem: file, line and column of each.</summary>
internal static class BookProblems
{
    public static Refused Faulty(IReadOnlyList<ImportError> errors, int total) => new(
        Problem.Of("bad-book", [.. errors.Select(ToError)]) with
        {
            Detail = string.Create(CultureInfo.InvariantCulture, $"{total} {(total == 1 ? "fault" : "faults")}{(total > errors.Count ? $", the first {errors.Count} listed" : "")}. Nothing was stored."),
        });

    public static Clash AlreadyThere(string book) =>
        new(new FieldError("book", book, "the name of a book that the base does not hold yet", "use mode=replace to put the new state in its place"));

    public static Clash InUse(ImportOutcome.InUse inUse) => new(
    [
        .. inUse.Users.Select(user => new FieldError(
            "book", $"{user.Book}: {user.File} {user.Key}: {user.Uses}".TrimEnd(' ', ':'), $"a book that leaves the others whole; with this one, {user.Reason}",
            $"keep what that row refers to, or first replace the book {user.Book} by one without it")),
    ]);

    private static FieldError ToError(ImportError error) => FieldError.OfCell(error.Column ?? error.File, error.Value, error.Reason, error.Suggestion) with
    {
        File = error.File,
        Line = error.Line,
        Column = error.Column,
    };
}

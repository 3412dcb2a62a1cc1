using System.Globalization;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.History;

/// <summary>Says what stands against taking a change back; nothing was stored.</summary>
internal static class UndoProblems
{
    public static Clash Undone(long change, long by) => new(Problem.Of("cannot-undo", new FieldError(
        "change", Text($"change {change}, which change {by} has taken back"), "a change that still holds", Text($"take change {by} back to have it again"))));

    public static Clash ChangedSince(UndoOutcome.ChangedSince since) => new(Problem.Of(
        "cannot-undo", [.. since.Later.Select(later => ToError(later.Row, later.By))]));

    public static Clash InUse(UndoOutcome.InUse inUse) => new(Problem.Of(
        "cannot-undo",
        [.. inUse.Users.Select(user => EditProblems.ToError(user, "change", "change or remove that row first, or take its change back first"))]));

    private static FieldError ToError(RowTold row, ChangeSeen? by) => new(
        "change", $"{row.Table} {row.Key}, which was changed again since ({(row.Differs.Count > 0 ? string.Join(", ", row.Differs) : "the whole row")})",
        "a row that is still as the change left it", by is null ? null : Text($"take change {by.Change} back first{(by.Who is null ? "" : $", by {by.Who}")}"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

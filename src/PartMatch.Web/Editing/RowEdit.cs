using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;
using PartMatch.Web.Http;

namespace PartMatch.Web.Editing;

/// <summary>Makes a change and says what came of it.</summary>
internal sealed class RowEdit(EditStore edits, HttpResponse response, CancellationToken cancellation)
{
    private const string MendRemoval =
        "change or remove that row first; evidence that no longer holds can be retracted instead: it stays visible and does not count";

    private static readonly ChangesBodyRules _rules = new();

    /// <summary>One row: 201 where it is added, and its version as ETag.</summary>
    public Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> Make(EditAsked asked, ChangeBody change)
    {
        if (!RowStore.Tables.Contains(change.Table))
        {
            return EditProblems.NoTable(change.Table);
        }

        return Answer(asked, [change], isSingle: true);
    }

    public Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> MakeAll(EditAsked asked, ChangesBody body) =>
        _rules.Validate(body) is { IsValid: false } misshapen ? EditProblems.Misshapen(misshapen, inChanges: true) : Answer(asked, body.Rows, isSingle: false);

    private Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> Answer(EditAsked asked, IReadOnlyList<ChangeBody> changes, bool isSingle)
    {
        if (isSingle && _rules.Validate(new ChangesBody(changes)) is { IsValid: false } misshapen)
        {
            return EditProblems.Misshapen(misshapen, inChanges: false);
        }

        var wanted = changes.Select(change => new RowChange(change.Table, change.Key, change.Version, change.Row)).ToList();
        var outcome = edits.Apply(asked.Book, wanted, NoteRules.Note(asked.Who, asked.Why), Act.Edit, cancellation);
        return outcome switch
        {
            EditOutcome.Done done => Done(asked, done.Change, done.Rows, isSingle && asked.Key is null),
            EditOutcome.Same same => Done(asked, null, same.Rows, isAdded: false),
            EditOutcome.NoBook none => EditProblems.NoBook(none.Book),
            EditOutcome.Faulty faulty => EditProblems.Faulty(faulty.Faults, inChanges: !isSingle),
            EditOutcome.InUse inUse => EditProblems.InUse(inUse.Users, inUse.Total, MendRemoval),
            EditOutcome.Stale stale => EditProblems.Outdated(
                stale, isSingle ? "If-Match" : $"rows[{stale.Row}].version", changes[stale.Row].Version, changes[stale.Row].Row),
            var other => throw new InvalidOperationException($"An edit ended as {other.GetType().Name}, which no answer names."),
        };
    }

    private Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> Done(EditAsked asked, long? change, IReadOnlyList<RowSeen> rows, bool isAdded)
    {
        var key = rows is [var only] && asked.Table is not null ? only.Key : asked.Key;
        var answer = new EditAnswer(asked, change, [.. rows.Select(RowNow.Of)], EditLinks.ToHistory(asked.Book, asked.Table, key));
        if (asked.Table is not null && answer.Rows is [var row])
        {
            response.Headers.ETag = $"\"{row.Version}\"";
        }

        return isAdded ? TypedResults.Created(answer.Rows[0].Link, answer) : TypedResults.Ok(answer);
    }
}

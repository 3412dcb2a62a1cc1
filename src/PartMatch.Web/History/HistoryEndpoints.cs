using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.History;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.History;

/// <summary>Changes of the base, newest first.</summary>
/// <param name="Total">How many match, on all pages together.</param>
public sealed record HistoryAnswer(HistoryAsked Asked, int Total, string? Cursor, IReadOnlyList<ChangeTold> Changes, string Permalink);

public sealed record HistoryAsked(string? Book, string? Table, string? Key, int Limit, string? Cursor);

/// <summary>A change that took another one back.</summary>
/// <param name="Rows">The rows that are there again; those that are gone again are left out.</param>
public sealed record UndoAnswer(UndoAsked Asked, long Change, long Undoes, IReadOnlyList<RowNow> Rows, string Permalink);

public sealed record UndoAsked(long Change, string? Who, string? Why);

internal static class HistoryEndpoints
{
    public static void MapHistory(this RouteGroupBuilder api)
    {
        api.MapGet("/history", List).WithName("ListHistory").WithTags("history")
            .WithSummary("Who changed what, when and why, with before and after; newest first");
        var undo = api.MapPost("/history/{change}/undo", Undo).WithName("UndoChange").WithTags("history")
            .WithSummary("Takes one change back, as a change of its own");
        ProblemAnswer.Describe(undo, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden);
    }

    private static Ok<HistoryAnswer> List([AsParameters] HistoryRequest request, HistoryStore history)
    {
        var asked = new HistoryAsked(request.Book, request.Table, request.Key, CommonRules.PageSize(request.Limit), request.Cursor);
        var page = history.List(new HistoryWanted(asked.Book, asked.Table, asked.Key, asked.Limit, CommonRules.FindWhole(asked.Cursor)));
        var link = new Permalink("/api/history").With("book", asked.Book).With("table", asked.Table).With("key", asked.Key)
            .With("limit", asked.Limit).With("cursor", asked.Cursor);
        return TypedResults.Ok(new HistoryAnswer(asked, page.Total, page.Next?.ToString(CultureInfo.InvariantCulture), page.Changes, link.ToString()));
    }

    private static Results<Ok<UndoAnswer>, Absent, Clash> Undo([AsParameters] UndoRequest request, UndoStore undo, CancellationToken cancellation)
    {
        if (CommonRules.FindWhole(request.Change) is not { } change)
        {
            return NoChange(request.Change);
        }

        return undo.Undo(change, NoteRules.Note(request.Who, request.Why), cancellation) switch
        {
            UndoOutcome.Done done => TypedResults.Ok(new UndoAnswer(
                new UndoAsked(change, request.Who, request.Why), done.Change, change, [.. done.Rows.Select(RowNow.Of)], "/api/history")),
            UndoOutcome.NoChange => NoChange(request.Change),
            UndoOutcome.Undone undone => UndoProblems.Undone(change, undone.By),
            UndoOutcome.ChangedSince since => UndoProblems.ChangedSince(since),
            UndoOutcome.InUse inUse => UndoProblems.InUse(inUse),
            var other => throw new InvalidOperationException($"An undo ended as {other.GetType().Name}, which no answer names."),
        };
    }

    private static Absent NoChange(string change) => new(
        new FieldError("change", change, "the number of a change of the history", "the changes are listed at /api/history"));
}

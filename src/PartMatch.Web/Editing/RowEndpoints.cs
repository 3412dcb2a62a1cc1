using System.Buffers.Text;
using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Editing;

internal static class RowEndpoints
{
    private const int MaxBodyBytes = 4 << 20;

    public static void MapRows(this RouteGroupBuilder api)
    {
        api.MapGet("/books/{book}/{table}", List).WithName("ListRows").WithTags("editing")
            .WithSummary("Rows of a table of a book, and what its columns may hold");
        api.MapGet("/books/{book}/{table}/{key}", Show).WithName("ShowRow").WithTags("editing").WithSummary("One row, its version, and who changed it last");
        Write(api.MapPost("/books/{book}/{table}", Add).WithName("AddRow").WithSummary("Adds a row"));
        Write(api.MapPut("/books/{book}/{table}/{key}", Put).WithName("ChangeRow").WithSummary("Changes a row that nobody has changed since it was seen"));
        Write(api.MapDelete("/books/{book}/{table}/{key}", Remove).WithName("RemoveRow").WithSummary("Removes a row that nothing else uses"));
        Write(api.MapPost("/books/{book}/changes", Change).WithName("ChangeRows")
            .WithSummary("Adds, changes and removes rows of a book, all or nothing, as one change"));
    }

    private static void Write(RouteHandlerBuilder route)
    {
        route.WithTags("editing").WithMetadata(new RequestSizeLimitAttribute(MaxBodyBytes));
        ProblemAnswer.Describe(
            route, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden,
            StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType);
    }

    private static Results<Ok<RowsAnswer>, Absent> List([AsParameters] RowsRequest request, RowStore rows)
    {
        if (RowStore.FindColumns(request.Table) is not { } columns)
        {
            return EditProblems.NoTable(request.Table);
        }

        if (!rows.HasBook(request.Book))
        {
            return EditProblems.NoBook(request.Book);
        }

        var asked = new RowsAsked(request.Book, request.Table, request.Query, request.Where ?? [], request.Used == "true", request.PageSize, request.Cursor);
        var page = rows.List(request.Book, request.Table, new RowsWanted(request.Query, request.Conditions, asked.Used, asked.Limit, PlaceOf(request.Cursor)));
        var link = Permalink.To("/api/books", request.Book, request.Table).With("q", request.Query).WithEach("where", asked.Where)
            .With("used", asked.Used ? "true" : null).With("limit", asked.Limit).With("cursor", request.Cursor);
        return TypedResults.Ok(new RowsAnswer(asked, columns, page.Total, CursorOf(page.Next), [.. page.Rows.Select(RowNow.Of)], link.ToString()));
    }

    private static Results<Ok<RowAnswer>, Absent> Show([AsParameters] RowRequest request, RowStore rows, HttpResponse response)
    {
        var asked = new RowAsked(request.Book, request.Table, request.WrittenKey);
        if (RowStore.FindColumns(request.Table) is not { } columns)
        {
            return EditProblems.NoTable(request.Table);
        }

        if (rows.Find(asked.Book, asked.Table, asked.Key) is not { } found)
        {
            return rows.HasBook(request.Book) ? EditProblems.NoRow(asked) : EditProblems.NoBook(request.Book);
        }

        response.Headers.ETag = $"\"{found.Row.Version}\"";
        return TypedResults.Ok(new RowAnswer(
            asked, columns, found.Row.Key, found.Row.Version, found.Row.Row, found.Changed, EditLinks.ToRow(asked.Book, asked.Table, asked.Key)));
    }

    private static Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> Add(
        [AsParameters] RowAddRequest request, [FromBody] Dictionary<string, string> row, EditStore edits, HttpResponse response,
        CancellationToken cancellation) =>
        new RowEdit(edits, response, cancellation).Make(
            new EditAsked(request.Book, request.Table, null, request.Who, request.Why), new ChangeBody(request.Table, null, null, row));

    private static Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> Put(
        [AsParameters] RowChangeRequest request, [FromBody] Dictionary<string, string> row, EditStore edits, HttpResponse response,
        CancellationToken cancellation) =>
        request.IfMatch is null
            ? EditProblems.VersionNeeded()
            : new RowEdit(edits, response, cancellation).Make(
                new EditAsked(request.Book, request.Table, request.WrittenKey, request.Who, request.Why),
                new ChangeBody(request.Table, request.WrittenKey, request.Version, row));

    private static Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> Remove(
        [AsParameters] RowChangeRequest request, EditStore edits, HttpResponse response, CancellationToken cancellation) =>
        request.IfMatch is null
            ? EditProblems.VersionNeeded()
            : new RowEdit(edits, response, cancellation).Make(
                new EditAsked(request.Book, request.Table, request.WrittenKey, request.Who, request.Why),
                new ChangeBody(request.Table, request.WrittenKey, request.Version));

    private static Results<Ok<EditAnswer>, Created<EditAnswer>, Refused, Absent, Clash, Stale> Change(
        [AsParameters] ChangesRequest request, [FromBody] ChangesBody body, EditStore edits, HttpResponse response, CancellationToken cancellation) =>
        new RowEdit(edits, response, cancellation).MakeAll(new EditAsked(request.Book, null, null, request.Who, request.Why), body);

    private static string? CursorOf(RowPlace? place) => place is null ? null : Base64Url.EncodeToString(Encoding.UTF8.GetBytes($"{place.Book},{place.Key}"));

    // Whatever it holds is a place in the order of keys: a cursor that nobody gave out begins somewhere, and names nothing.
    private static RowPlace? PlaceOf(string? cursor) =>
        cursor is not null && Base64Url.IsValid(cursor) && Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor)).Split(',', 2) is [var book, var key]
            ? new RowPlace(key, book)
            : null;
}

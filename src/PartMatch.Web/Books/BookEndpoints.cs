using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Families;
using PartMatch.Storage.Books;
using PartMatch.Web.Editing;
using PartMatch.Web.Host;
using PartMatch.Web.Http;

namespace PartMatch.Web.Books;

internal static class BookEndpoints
{
    private const string Zip = "application/zip";

    private const int MaxZipBytes = 64 << 20;

    public static void MapBooks(this RouteGroupBuilder api)
    {
        api.MapGet("/books", List).WithName("ListBooks").WithTags("books")
            .WithSummary("Every parts book of the base");
        api.MapGet("/books/{book}", Export).WithName("ExportBook").WithTags("books")
            .WithSummary("A parts book as a zip of CSV files, in canonical form")
            .Produces(StatusCodes.Status200OK, contentType: Zip);
        var import = api.MapPost("/books", Import).WithName("ImportBook").WithTags("books")
            .WithSummary("Imports a parts book from a zip, all or nothing; as JSON lines with the progress where they are asked for")
            .Accepts<Stream>(Zip)
            .WithMetadata(new RequestSizeLimitAttribute(MaxZipBytes));
        ProblemAnswer.Describe(
            import, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType);
    }

    private static Ok<BooksAnswer> List(BookStore books) =>
        TypedResults.Ok(new BooksAnswer(new NothingAsked(), books.List(), "/api/books"));

    private static Results<FileContentHttpResult, Absent> Export(string book, BookStore books)
    {
        if (books.Export(book) is not { } files)
        {
            return new Absent(new FieldError("book", book, "the name of a book of the base", "the books are listed at /api/books"));
        }

        using var zip = new MemoryStream();
        BookZip.Write(files, zip);
        var bytes = zip.ToArray();
        var tag = new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 16))}\"");
        return TypedResults.File(bytes, Zip, $"{book}.zip", entityTag: tag);
    }

    private static async Task<Results<ImportStream, Refused>> Import(
        [AsParameters] BookImportRequest request, Stream body, BookStore books, BookSettings settings, CancellationToken cancellation)
    {
        var zip = new MemoryStream(); // the files are read from it while the answer is made
        await body.CopyToAsync(zip, cancellation);
        zip.Position = 0;
        return BookZip.Read(zip, settings.Limits) switch
        {
            BookRead read => new ImportStream((tell, gone) =>
                ToAnswer(request, books.Import(read.Files, request.ImportMode, request.IsDryRun, gone, NoteRules.Note(request.Who, request.Why), tell))),
            BookUnreadable unreadable => BookProblems.Faulty([unreadable.Error], 1),
            var other => throw new InvalidOperationException($"A zip was read as {other.GetType().Name}, which no answer names."),
        };
    }

    private static IResult ToAnswer(BookImportRequest request, ImportOutcome outcome) =>
        outcome switch
        {
            ImportOutcome.Imported { Replaced: false } added => TypedResults.Created(Link(added.Book), Answer(request, ImportResult.Added, added.Book, added.Counts)),
            ImportOutcome.Imported replaced => TypedResults.Ok(Answer(request, ImportResult.Replaced, replaced.Book, replaced.Counts)),
            ImportOutcome.Checked { WouldReplace: true } check => TypedResults.Ok(Answer(request, ImportResult.WouldReplace, check.Book, check.Counts)),
            ImportOutcome.Checked check => TypedResults.Ok(Answer(request, ImportResult.WouldAdd, check.Book, check.Counts)),
            ImportOutcome.Refused refused => BookProblems.Faulty(refused.Errors, refused.Total),
            ImportOutcome.AlreadyThere there => BookProblems.AlreadyThere(there.Book),
            ImportOutcome.InUse inUse => BookProblems.InUse(inUse),
            var other => throw new InvalidOperationException($"An import ended as {other.GetType().Name}, which no answer names."),
        };

    private static ImportAnswer Answer(BookImportRequest request, ImportResult result, string book, IReadOnlyList<FileCount> counts) =>
        new(new ImportAsked(request.ImportMode, request.IsDryRun), result, book, counts, Link(book));

    private static string Link(string book) => Permalink.To("/api/books", book).ToString();
}

using System.Globalization;
using System.Net.Mime;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Merge;
using PartMatch.Web.Editing;
using PartMatch.Web.Host;
using PartMatch.Web.Http;

namespace PartMatch.Web.Books;

internal static class MergeEndpoints
{
    private const string Zip = "application/zip";
    private const int MaxBytes = 64 << 20;

    /// <summary>Most conflicts that a problem lists; the CSV has them all.</summary>
    private const int MaxListed = 200;

    public static void MapMerge(this RouteGroupBuilder api)
    {
        var merge = api.MapPost("/books/{book}/merge", Merge).WithName("MergeBook").WithTags("books")
            .WithSummary("Takes the rows of another state of a book into the base; what differs is decided by a person, nothing is removed or overwritten silently")
            .Accepts<Stream>(Zip, "multipart/form-data")
            .Produces(StatusCodes.Status409Conflict, contentType: MediaTypeNames.Text.Csv)
            .WithMetadata(new RequestSizeLimitAttribute(MaxBytes));
        ProblemAnswer.Describe(
            merge, StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType);
    }

    private static async Task<Results<Ok<MergeAnswer>, Refused, Absent, Clash, ConflictTable>> Merge(
        [AsParameters] MergeRequest request, HttpRequest http, MergeStore merges, BookSettings settings, CancellationToken cancellation)
    {
        var body = await MergeBody.ReadAsync(http, cancellation);
        var asked = new MergeAsked(request.Book, request.DryRun == "true", body.Decisions is not null, request.Who, request.Why);
        if (body.Zip is null)
        {
            return new Refused(Problem.Of("bad-request", new FieldError("book", "nothing", "a form with the zip of the other book as book, and perhaps the filled-in conflicts as decisions")));
        }

        return BookZip.Read(body.Zip, settings.Limits) switch
        {
            BookRead read => ToAnswer(
                asked, merges.Merge(request.Book, read.Files, body.Decisions, asked.DryRun, NoteRules.Note(request.Who, request.Why), cancellation), WantsTable(http)),
            BookUnreadable unreadable => BookProblems.Faulty([unreadable.Error], 1),
            var other => throw new InvalidOperationException($"A zip was read as {other.GetType().Name}, which no answer names."),
        };
    }

    private static Results<Ok<MergeAnswer>, Refused, Absent, Clash, ConflictTable> ToAnswer(MergeAsked asked, MergeOutcome outcome, bool wantsTable) => outcome switch
    {
        MergeOutcome.Merged merged =>
            TypedResults.Ok(new MergeAnswer(asked, MergeResult.Merged, merged.Change, merged.Counts, merged.Files, EditLinks.ToHistory(asked.Book, null, null))),
        MergeOutcome.Checked check =>
            TypedResults.Ok(new MergeAnswer(asked, MergeResult.WouldMerge, null, check.Counts, check.Files, EditLinks.ToHistory(asked.Book, null, null))),
        MergeOutcome.NoBook => EditProblems.NoBook(asked.Book),
        MergeOutcome.OtherBook other => new Refused(Problem.Of("bad-book", new FieldError(
            "book", other.Found, $"another state of the book {asked.Book}", $"merge it into {other.Found}, or import it as a book of its own"))),
        MergeOutcome.Undecided undecided when wantsTable => new ConflictTable($"{asked.Book}-conflicts.csv", undecided.Csv),
        MergeOutcome.Undecided undecided => new Clash(Differ(undecided)),
        MergeOutcome.Refused refused => BookProblems.Faulty(refused.Errors, refused.Total),
        MergeOutcome.InUse inUse => EditProblems.InUse(inUse.Users, inUse.Total, "decide otherwise about the rows that it uses"),
        var other => throw new InvalidOperationException($"A merge ended as {other.GetType().Name}, which no answer names."),
    };

    private static Problem Differ(MergeOutcome.Undecided undecided) => Problem.Of(
        "merge-conflicts",
        [
            .. undecided.Conflicts.Take(MaxListed).Select(conflict => new FieldError(
                conflict.Column, $"here “{conflict.Here}”, there “{conflict.There}”", "a decision: here or there", "ask with Accept: text/csv for the table to fill in")
            {
                File = conflict.File,
                Column = conflict.Column,
                Key = conflict.Key,
            }),
        ]) with
    {
        Detail = string.Create(
            CultureInfo.InvariantCulture, $"{undecided.Conflicts.Count} cells differ, {undecided.Open} of them wait for a decision. Nothing was stored."),
    };

    private static bool WantsTable(HttpRequest request) => request.GetTypedHeaders().Accept.Any(type => type.MediaType.Equals(MediaTypeNames.Text.Csv, StringComparison.OrdinalIgnoreCase));
}

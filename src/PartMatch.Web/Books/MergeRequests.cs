using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Storage.Books;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Books;

public sealed record MergeRequest(
    [property: FromRoute(Name = "book"), Description("Code of the book in the base.")] string Book,
    [property: FromQuery(Name = "dry-run"), Description("true to report what would happen and store nothing; false when left out.")] string? DryRun,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why);

internal sealed class MergeRules : AbstractValidator<MergeRequest>
{
    public MergeRules()
    {
        RuleFor(request => request.DryRun).Must(dryRun => dryRun is null or "true" or "false").Otherwise("true or false", "leave dry-run out to store the rows");
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

/// <summary>The body of a merge: a zip, or a form with the zip as <c>book</c> and the filled-in conflicts as <c>decisions</c>.</summary>
/// <param name="Zip">Null when the form has none.</param>
internal sealed record MergeBody(MemoryStream? Zip, BookFile? Decisions)
{
    public static async Task<MergeBody> ReadAsync(HttpRequest request, CancellationToken cancellation)
    {
        if (!request.HasFormContentType)
        {
            return new MergeBody(await CopyAsync(request.Body, cancellation), null);
        }

        var form = await request.ReadFormAsync(cancellation);
        var (book, decisions) = (form.Files["book"], form.Files["decisions"]);
        return new MergeBody(
            book is null ? null : await CopyAsync(book.OpenReadStream(), cancellation),
            decisions is null ? null : new BookFile("conflicts.csv", (await CopyAsync(decisions.OpenReadStream(), cancellation)).ToArray()));
    }

    private static async Task<MemoryStream> CopyAsync(Stream from, CancellationToken cancellation)
    {
        var copy = new MemoryStream();
        await from.CopyToAsync(copy, cancellation);
        copy.Position = 0;
        return copy;
    }
}

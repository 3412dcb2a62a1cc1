using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books;
using PartMatch.Web.Http;

namespace PartMatch.Web.Books;

/// <param name="Mode"><c>add</c>, or <c>replace</c> to take the place of the book of the same name; <c>add</c> when left out.</param>
/// <param name="DryRun"><c>true</c> to report what would happen and store nothing; <c>false</c> when left out.</param>
public sealed record BookImportRequest([property: FromQuery(Name = "mode")] string? Mode, [property: FromQuery(Name = "dry-run")] string? DryRun)
{
    internal ImportMode ImportMode => Codes.Find<ImportMode>(Mode ?? "") ?? ImportMode.Add;

    internal bool IsDryRun => DryRun == "true";
}

internal sealed class BookImportRules : AbstractValidator<BookImportRequest>
{
    public BookImportRules()
    {
        RuleFor(request => request.Mode).Must(mode => mode is null || Codes.Find<ImportMode>(mode) is not null)
            .Otherwise("add or replace", "leave mode out to add a new book");
        RuleFor(request => request.DryRun).Must(dryRun => dryRun is null or "true" or "false")
            .Otherwise("true or false", "leave dry-run out to store the book");
    }
}

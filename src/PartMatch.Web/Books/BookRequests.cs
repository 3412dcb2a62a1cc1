using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Books;

public sealed record BookImportRequest(
    [property: FromQuery(Name = "mode"), Description("add, or replace to take the place of the book of the same name; add when left out.")] string? Mode,
    [property: FromQuery(Name = "dry-run"), Description("true to report what would happen and store nothing; false when left out.")] string? DryRun,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
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
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

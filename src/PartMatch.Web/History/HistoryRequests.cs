using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Storage.Editing;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.History;

public sealed record HistoryRequest(
    [property: FromQuery(Name = "book"), Description("Only changes of this book.")] string? Book,
    [property: FromQuery(Name = "table"), Description("Only changes of this table: the name of a file of a book without .csv.")] string? Table,
    [property: FromQuery(Name = "key"), Description("Only changes of the row with this key; needs table and book.")] string? Key,
    [property: FromQuery(Name = "limit"), Description("Changes per page, 1 to 200; 20 when left out.")] string? Limit,
    [property: FromQuery(Name = "cursor"), Description("From the page before; left out for the newest.")] string? Cursor);

internal sealed class HistoryRules : AbstractValidator<HistoryRequest>
{
    public HistoryRules()
    {
        RuleFor(request => request.Table).Must(table => table is null || RowStore.Tables.Contains(table)).Otherwise($"one of {string.Join(", ", RowStore.Tables)}");
        RuleFor(request => request.Key).Must((request, key) => key is null || (request.Table is not null && request.Book is not null))
            .Otherwise("a key together with book and table", "the same key can stand in several tables and books");
        RuleFor(request => request.Limit).MustBePageSize();
        RuleFor(request => request.Cursor).Must(cursor => cursor is null || CommonRules.FindWhole(cursor) is not null)
            .Otherwise("the cursor of the page before", "leave it out for the newest");
    }
}

public sealed record UndoRequest(
    [property: FromRoute(Name = "change"), Description("The number of the change.")] string Change,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why);

internal sealed class UndoRules : AbstractValidator<UndoRequest>
{
    public UndoRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

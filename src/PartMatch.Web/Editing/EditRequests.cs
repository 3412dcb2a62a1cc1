using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Storage.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Editing;

public sealed record RowsRequest(
    [property: FromRoute(Name = "book"), Description("Code of the book.")] string Book,
    [property: FromRoute(Name = "table"), Description("The name of a file of a book without .csv.")] string Table,
    [property: FromQuery(Name = "q"), Description("A text that some cell of the row contains.")] string? Query,
    [property: FromQuery(Name = "where"), Description("column:value that the row has; may be repeated.")] string[]? Where,
    [property: FromQuery(Name = "used"), Description("true for the rows of the books that this one uses as well.")] string? Used,
    [property: FromQuery(Name = "limit"), Description("Rows per page, 1 to 1000; 100 when left out.")] string? Limit,
    [property: FromQuery(Name = "cursor"), Description("From the page before; left out for the first page.")] string? Cursor)
{
    internal const int LargestPage = 1000;

    private const int DefaultPage = 100;

    internal int PageSize => (int?)CommonRules.FindWhole(Limit) ?? DefaultPage;

    /// <summary>Column and value of each condition; a text without a colon has no column.</summary>
    internal IReadOnlyList<(string Column, string Value)> Conditions =>
        [.. (Where ?? []).Select(text => text.Split(':', 2)).Select(pair => pair.Length == 2 ? (pair[0], pair[1]) : ("", pair[0]))];
}

internal sealed class RowsRules : AbstractValidator<RowsRequest>
{
    public RowsRules()
    {
        RuleFor(request => request.Where).Must((request, _) => FindUnknown(request) is null).When(request => RowStore.FindColumns(request.Table) is not null)
            .WithState(request => new Mending(
                $"column:value, the column one of {string.Join(", ", ColumnsOf(request))}", "for example where=evidence:ev-0001", FindUnknown(request)));
        RuleFor(request => request.Used).Must(used => used is null or "true" or "false").Otherwise("true or false", "leave it out for the rows of this book alone");
        RuleFor(request => request.Limit).Must(limit => limit is null || CommonRules.FindWhole(limit) is >= 1 and <= RowsRequest.LargestPage)
            .Otherwise($"a whole number from 1 to {RowsRequest.LargestPage}", "leave limit out for 100");
    }

    private static string? FindUnknown(RowsRequest request) =>
        request.Conditions.Where(one => !ColumnsOf(request).Contains(one.Column)).Select(one => $"{one.Column}:{one.Value}".TrimStart(':')).FirstOrDefault();

    private static IEnumerable<string> ColumnsOf(RowsRequest request) => RowStore.FindColumns(request.Table)?.Select(column => column.Column) ?? [];
}

public sealed record RowRequest(
    [property: FromRoute(Name = "book"), Description("Code of the book.")] string Book,
    [property: FromRoute(Name = "table"), Description("The name of a file of a book without .csv.")] string Table,
    [property: FromRoute(Name = "key"), Description("The row's key cells joined by commas, percent-encoded; in a cell a comma is written %2C and a percent sign %25.")] string Key)
{
    internal string WrittenKey => NumberInPath.Decode(Key);
}

public sealed record RowAddRequest(
    [property: FromRoute(Name = "book"), Description("Code of the book.")] string Book,
    [property: FromRoute(Name = "table"), Description("The name of a file of a book without .csv.")] string Table,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why);

public sealed record RowChangeRequest(
    [property: FromRoute(Name = "book"), Description("Code of the book.")] string Book,
    [property: FromRoute(Name = "table"), Description("The name of a file of a book without .csv.")] string Table,
    [property: FromRoute(Name = "key"), Description("The row's key cells joined by commas, percent-encoded; in a cell a comma is written %2C and a percent sign %25.")] string Key,
    [property: FromHeader(Name = "If-Match"), Description("The version that was seen, in quotes; * to change it whatever it is by now.")] string? IfMatch,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why)
{
    internal string WrittenKey => NumberInPath.Decode(Key);

    /// <summary>The version without its quotes; null where any will do.</summary>
    internal string? Version => IfMatch?.Trim() is "*" or null ? null : IfMatch.Trim().Trim('"');
}

public sealed record ChangesRequest(
    [property: FromRoute(Name = "book"), Description("Code of the book.")] string Book,
    [property: FromQuery(Name = "who"), Description("Your name, for the history.")] string? Who,
    [property: FromQuery(Name = "why"), Description("The reason, for the history.")] string? Why);

internal sealed class RowAddRules : AbstractValidator<RowAddRequest>
{
    public RowAddRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

internal sealed class RowChangeRules : AbstractValidator<RowChangeRequest>
{
    public RowChangeRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

internal sealed class ChangesRules : AbstractValidator<ChangesRequest>
{
    public ChangesRules()
    {
        RuleFor(request => request.Who).MustBeName();
        RuleFor(request => request.Why).MustBeReason();
    }
}

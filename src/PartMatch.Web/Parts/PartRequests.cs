using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;

namespace PartMatch.Web.Parts;

public sealed record PartSearchRequest(
    [property: FromQuery(Name = "q"), Required, Description("The beginning or the middle of a number, or words of a name.")] string? Query,
    [property: FromQuery(Name = "limit"), Description("Parts per page, 1 to 200; 20 when left out.")] string? Limit,
    [property: FromQuery(Name = "cursor"), Description("From the page before; left out for the first page.")] string? Cursor);

internal sealed class PartSearchRules : AbstractValidator<PartSearchRequest>
{
    private const int LongestQuery = 100;

    public PartSearchRules()
    {
        RuleFor(request => request.Query).Must(query => query?.Trim().Length is > 0 and <= LongestQuery)
            .Otherwise($"a number or words, 1 to {LongestQuery} characters", "for example q=P-26 or q=coolant pump");
        RuleFor(request => request.Limit).MustBePageSize();
        RuleFor(request => request.Cursor).Must(cursor => cursor is null || PartStore.IsCursor(cursor))
            .Otherwise("the cursor of the page before", "leave it out for the first page");
    }
}

public sealed record PartRequest(
    [property: FromRoute(Name = "number"), Description("The number as you have it, percent-encoded; separators and case do not matter. Also maker:number.")] string Number,
    [property: FromQuery(Name = "maker"), Description("Only numbers of this maker.")] string? Maker)
{
    internal string Written => NumberInPath.Decode(Number);
}

internal sealed class PartRules : AbstractValidator<PartRequest>
{
    public PartRules() => RuleFor(request => request.Written).MustBeNumber().OverridePropertyName("number");
}

using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.LookAlikes;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;

namespace PartMatch.Web.LookAlikes;

public sealed record LookAlikeRequest(
    [property: FromRoute(Name = "number"), Description("The number as you have it, percent-encoded; it need not be in any book.")] string Number,
    [property: FromQuery(Name = "maker"), Description("Whose number it is, where several makers use it.")] string? Maker,
    [property: FromQuery(Name = "family"), Description("The family in which the danger is judged; every family when left out. It hides nothing.")] string? Family,
    [property: FromQuery(Name = "limit"), Description("Rows per page, 1 to 200; 20 when left out.")] string? Limit,
    [property: FromQuery(Name = "cursor"), Description("From the page before; left out for the first page.")] string? Cursor)
{
    internal string Written => NumberInPath.Decode(Number);

    internal LookAlikeQuestion ToQuestion()
    {
        var (maker, number) = NamedPart.Split(Written);
        return new LookAlikeQuestion(number, maker ?? Maker, Family, CommonRules.PageSize(Limit), Cursor);
    }
}

internal sealed class LookAlikeRules : AbstractValidator<LookAlikeRequest>
{
    public LookAlikeRules()
    {
        RuleFor(request => request.Written).MustBeNumber().OverridePropertyName("number");
        RuleFor(request => request.Limit).MustBePageSize();
        RuleFor(request => request.Cursor).MustBeListCursor();
    }
}

public sealed record NearRequest(
    [property: FromRoute(Name = "number"), Description("The number as you have it, percent-encoded; it need not be in any book.")] string Number,
    [property: FromQuery(Name = "maker"), Description("Whose number it is, where several makers use it.")] string? Maker,
    [property: FromQuery(Name = "limit"), Description("Rows per page, 1 to 200; 20 when left out.")] string? Limit,
    [property: FromQuery(Name = "cursor"), Description("From the page before; left out for the first page.")] string? Cursor)
{
    internal string Written => NumberInPath.Decode(Number);

    internal NearQuestion ToQuestion()
    {
        var (maker, number) = NamedPart.Split(Written);
        return new NearQuestion(number, maker ?? Maker, CommonRules.PageSize(Limit), Cursor);
    }
}

internal sealed class NearRules : AbstractValidator<NearRequest>
{
    public NearRules()
    {
        RuleFor(request => request.Written).MustBeNumber().OverridePropertyName("number");
        RuleFor(request => request.Limit).MustBePageSize();
        RuleFor(request => request.Cursor).MustBeListCursor();
    }
}

internal static class CursorRule
{
    public static IRuleBuilderOptions<T, string?> MustBeListCursor<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(cursor => cursor is null || LookAlikeSearch.IsCursor(cursor))
        .Otherwise("the cursor of the page before", "leave it out for the first page");
}

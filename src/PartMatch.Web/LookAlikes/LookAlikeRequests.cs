using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
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

public sealed record PairRequest(
    [property: FromQuery(Name = "family"), Required, Description("The family whose parts are looked at.")] string? Family,
    [property: FromQuery(Name = "kind"), Description("Only pairs with a part of this kind.")] string? Kind,
    [property: FromQuery(Name = "danger"), Description("Only this danger: high, medium, low or none.")] string? Danger,
    [property: FromQuery(Name = "judgement"), Description("Only pairs that stand to each other so: same-part, newer-number, older-number, trap, harmless or not-judged, which is the list of what nobody has looked at yet.")] string? Judgement,
    [property: FromQuery(Name = "limit"), Description("Rows per page, 1 to 200; 20 when left out.")] string? Limit,
    [property: FromQuery(Name = "cursor"), Description("From the page before; left out for the first page.")] string? Cursor)
{
    internal PairQuestion ToQuestion() => new(
        Family ?? "", Kind, Danger is null ? null : Codes.Find<DangerLevel>(Danger), Judgement is null ? null : Codes.Find<PartRelation>(Judgement),
        CommonRules.PageSize(Limit), Cursor);
}

internal sealed class PairRules : AbstractValidator<PairRequest>
{
    public PairRules()
    {
        RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
        RuleFor(request => request.Danger).MustBeCode<PairRequest, DangerLevel>();
        RuleFor(request => request.Judgement).MustBeCode<PairRequest, PartRelation>();
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

public sealed record UnjudgedRequest(
    [property: FromRoute(Name = "book"), Description("The book whose numbers are looked at.")] string Book,
    [property: FromQuery(Name = "limit"), Description("Rows told, 1 to 200; 20 when left out.")] string? Limit)
{
    internal UnjudgedQuestion ToQuestion() => new(Book, CommonRules.PageSize(Limit));
}

internal sealed class UnjudgedRules : AbstractValidator<UnjudgedRequest>
{
    public UnjudgedRules() => RuleFor(request => request.Limit).MustBePageSize();
}

internal static class ListRules
{
    /// <summary>A code of a closed vocabulary, or nothing.</summary>
    public static IRuleBuilderOptions<T, string?> MustBeCode<T, TCode>(this IRuleBuilder<T, string?> rule)
        where TCode : struct, Enum => rule
        .Must(code => code is null || Codes.Find<TCode>(code) is not null)
        .Otherwise($"one of {string.Join(", ", Codes.All<TCode>())}", "leave it out for all of them");

    public static IRuleBuilderOptions<T, string?> MustBeListCursor<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(cursor => cursor is null || LookAlikeSearch.IsCursor(cursor))
        .Otherwise("the cursor of the page before", "leave it out for the first page");
}

using System.Globalization;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Measures;
using PartMatch.Web.Http;

namespace PartMatch.Web.Parts;

/// <param name="Query">The beginning or the middle of a number, or words of a name.</param>
/// <param name="Limit">Parts per page, 1 to 200; 20 when left out.</param>
/// <param name="Cursor">From the page before.</param>
public sealed record PartSearchRequest(
    [property: FromQuery(Name = "q")] string? Query, [property: FromQuery(Name = "limit")] string? Limit, [property: FromQuery(Name = "cursor")] string? Cursor);

internal sealed class PartSearchRules : AbstractValidator<PartSearchRequest>
{
    private const int LongestQuery = 100;

    public PartSearchRules()
    {
        RuleFor(request => request.Query).Must(query => query?.Trim().Length is > 0 and <= LongestQuery)
            .Otherwise($"a number or words, 1 to {LongestQuery} characters", "for example q=P-26 or q=coolant pump");
        RuleFor(request => request.Limit).MustBePageSize();
    }
}

/// <param name="Number">The number, written as you have it; separators and case do not matter.</param>
/// <param name="Maker">Only numbers of this maker.</param>
public sealed record PartRequest([property: FromRoute(Name = "number")] WrittenNumber Number, [property: FromQuery(Name = "maker")] string? Maker);

internal sealed class PartRules : AbstractValidator<PartRequest>
{
    public PartRules() => RuleFor(request => request.Number.Text).MustBeNumber().OverridePropertyName("number");
}

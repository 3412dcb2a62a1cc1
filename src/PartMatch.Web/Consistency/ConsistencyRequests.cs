using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Web.Http;

namespace PartMatch.Web.Consistency;

public sealed record ConsistencyRequest(
    [property: FromQuery(Name = "family"), Required, Description("Code of the family.")] string? Family,
    [property: FromQuery(Name = "variant"), Description("Only faults that concern this variant.")] string? Variant,
    [property: FromQuery(Name = "sort"), Description("Only this sort of fault; near-unjudged is looked for only when it is asked for.")] string? Sort,
    [property: FromQuery(Name = "limit"), Description("Faults listed, 1 to 1000; 100 when left out. The counts are always over all.")] string? Limit)
{
    internal ConsistencyQuestion ToQuestion() => new(
        string.IsNullOrEmpty(Variant) ? null : Variant, Codes.Find<FaultSort>(Sort ?? ""),
        CommonRules.FindWhole(Limit) is { } limit ? (int)limit : ConsistencyQuestion.DefaultLimit);
}

internal sealed class ConsistencyRules : AbstractValidator<ConsistencyRequest>
{
    public ConsistencyRules()
    {
        RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
        RuleFor(request => request.Sort).Must(sort => string.IsNullOrEmpty(sort) || Codes.Find<FaultSort>(sort) is not null)
            .Otherwise($"one of {string.Join(", ", Codes.All<FaultSort>())}", "leave it out for all of them");
        RuleFor(request => request.Limit)
            .Must(limit => limit is null || (CommonRules.FindWhole(limit) is { } many && many is >= 1 and <= ConsistencyQuestion.MaxLimit))
            .Otherwise($"a whole number from 1 to {ConsistencyQuestion.MaxLimit}", $"leave limit out for {ConsistencyQuestion.DefaultLimit}");
    }
}

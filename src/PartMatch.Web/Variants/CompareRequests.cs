using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Variants;
using PartMatch.Web.Http;

namespace PartMatch.Web.Variants;

public sealed record CompareRequest(
    [property: FromQuery(Name = "family"), Required, Description("Code of the family.")] string? Family,
    [property: FromQuery(Name = "variants"), Description("2 to 6 variants, joined by commas, in the order of the columns; the family's first six when left out.")] string? Variants,
    [property: FromQuery(Name = "group"), Description("Only positions of this group.")] string? Group,
    [property: FromQuery(Name = "show"), Description("all, differences or stoppers; all when left out. The counts are always over all.")] string? Show,
    [property: FromQuery(Name = "built"), Description("Build date of one variant's engine, as variant:YYYY-MM; may be repeated.")] string[]? Built)
{
    /// <summary>The question, once the rules have passed.</summary>
    /// <param name="facts">Of the family asked about.</param>
    internal CompareQuestion ToQuestion(FamilyFacts facts) => new(
        VariantList.Length > 0 ? VariantList : [.. facts.Variants.Select(variant => variant.Code).Take(VariantComparison.Most)],
        string.IsNullOrEmpty(Group) ? null : Group,
        Codes.Find<Show>(Show ?? "") ?? Core.Variants.Show.All,
        BuiltDates.ToDictionary(pair => pair.Variant, pair => pair.Built, StringComparer.Ordinal));

    internal string[] VariantList => (Variants ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Those of the dates that can be read.</summary>
    internal IEnumerable<(string Variant, BuildDate Built)> BuiltDates =>
        (Built ?? []).Select(text => text.Split(':', 2)).Where(parts => parts.Length == 2)
            .Select(parts => (Variant: parts[0], Built: BuildDate.Find(parts[1]))).Where(pair => pair.Built is not null)
            .Select(pair => (pair.Variant, pair.Built ?? throw new InvalidOperationException("filtered just above")));
}

internal sealed class CompareRules : AbstractValidator<CompareRequest>
{
    public CompareRules()
    {
        RuleFor(request => request.Family).MustBeGiven("the code of a family", "the families are listed at /api/families");
        RuleFor(request => request.Variants)
            .Must((request, _) => request.VariantList is { Length: 0 or (>= 2 and <= VariantComparison.Most) } list && list.Distinct(StringComparer.Ordinal).Count() == list.Length)
            .Otherwise($"2 to {VariantComparison.Most} different variants, joined by commas", "for example variants=tg,ts");
        RuleFor(request => request.Show).Must(show => string.IsNullOrEmpty(show) || Codes.Find<Show>(show) is not null)
            .Otherwise(string.Join(", ", Codes.All<Show>()));
        RuleFor(request => request.Built)
            .Must((request, built) => request.BuiltDates.Select(pair => pair.Variant).Distinct(StringComparer.Ordinal).Count() == (built ?? []).Length)
            .WithState(request => new Mending("variant:YYYY-MM or variant:YYYY-MM-DD, once for each variant", "for example built=tg:2016-05", string.Join(" and ", request.Built ?? [])));
    }
}

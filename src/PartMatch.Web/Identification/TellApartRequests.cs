using System.ComponentModel;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Web.Http;

namespace PartMatch.Web.Identification;

public sealed record TellApartRequest(
    [property: FromQuery(Name = "parts"), Description("1 to 40 numbers or maker:number, separated by commas. One alone is compared with its look-alikes of medium and high danger. Either this or family.")] string? Parts,
    [property: FromQuery(Name = "family"), Description("The family whose variants are to be told apart. Either this or parts.")] string? Family,
    [property: FromQuery(Name = "variants"), Description("Two or more of its variants, separated by commas; all when left out.")] string? Variants,
    [property: FromQuery(Name = "mode"), Description("before-paying (photos and labels) or in-hand; before-paying when left out.")] string? Mode,
    [property: FromQuery(Name = "tools"), Description("In hand: the tools that are there, separated by commas: steel-rule, caliper, gauge, scale, meter, bench, or none; all of them when left out.")] string? Tools,
    [property: FromQuery(Name = "seen"), Description("What was seen already, as an answer of the key writes it; may be repeated.")] string[]? Seen)
{
    /// <summary>Stands for an empty list of tools.</summary>
    internal const string NoTools = "none";

    internal bool IsAboutVariants => string.IsNullOrEmpty(Parts);

    internal IReadOnlyList<string> PartList => List(Parts);

    internal IReadOnlyList<string> VariantList => List(Variants);

    internal CheckMode? FindMode() => Mode is null ? CheckMode.BeforePaying : Codes.Find<CheckMode>(Mode);

    internal IReadOnlyList<Method?> ToolList =>
        Tools is null ? [.. TellApartTerms.AllTools.Cast<Method?>()] : Tools == NoTools ? [] : [.. List(Tools).Select(code => Codes.Find<Method>(code)).Distinct()];

    internal TellApartTerms Terms => new(FindMode() ?? CheckMode.BeforePaying, [.. ToolList.OfType<Method>().Order()], [.. (Seen ?? []).Distinct(StringComparer.Ordinal)]);

    private static IReadOnlyList<string> List(string? text) =>
        (text ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}

internal sealed class TellApartRules : AbstractValidator<TellApartRequest>
{
    private const int MostSeen = 100;

    private const int MostVariants = 12;

    public TellApartRules()
    {
        RuleFor(request => request.Parts).Must((request, parts) => string.IsNullOrEmpty(parts) != string.IsNullOrEmpty(request.Family))
            .WithState(request => new Mending("either parts= or family=", "parts= asks which part it is, family= which variant of an engine", string.IsNullOrEmpty(request.Parts) ? "neither" : "both"));
        RuleFor(request => request.Parts)
            .Must((request, _) => request.PartList is { Count: >= 1 and <= PartIdentification.MostParts } list && list.All(CommonRules.IsNumber))
            .Otherwise($"1 to {PartIdentification.MostParts} part numbers, separated by commas", "for example parts=P-26-1147-C,P-26-1147-E").When(request => !string.IsNullOrEmpty(request.Parts));
        RuleFor(request => request.Variants).Must((request, _) => request.IsAboutVariants && request.VariantList.Distinct(StringComparer.Ordinal).Count() is >= 2 and <= MostVariants)
            .Otherwise($"2 to {MostVariants} different variants, separated by commas, with family=", "leave variants out for all of the family").When(request => request.Variants is not null);
        RuleFor(request => request.Mode).Must((request, _) => request.FindMode() is not null).Otherwise(string.Join(" or ", Codes.All<CheckMode>()), "leave it out for before-paying");
        RuleFor(request => request.Tools).Must((request, _) => request.ToolList.All(tool => tool is { } known && TellApartTerms.AllTools.Contains(known)))
            .Otherwise($"some of {string.Join(", ", TellApartTerms.AllTools.Select(Codes.Of))}, separated by commas, or {TellApartRequest.NoTools}", "leave it out when all of them are there");
        RuleFor(request => request.Seen).Must(seen => seen is null || seen.Length <= MostSeen).Otherwise($"at most {MostSeen} observations", "leave out what rules nothing out");
    }
}

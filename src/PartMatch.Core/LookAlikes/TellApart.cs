using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>A check that shows which of two parts it is.</summary>
/// <param name="BeforePaying">It works on a photo or a label, so the seller can be asked for it.</param>
/// <param name="How">What to do, in the words of the kind; null when not recorded.</param>
public sealed record TellApart(string Feature, string Name, Method Check, decimal Minutes, bool BeforePaying, string? How)
{
    /// <summary>The check in words: "vane curve, by photo, 1 min".</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"{Name}, {LookAlikeWording.By(Check)}, {Minutes:0.##} min");

    /// <summary>The checks of a kind that separate two parts, given tolerances and the checks' uncertainty; cheapest first, then by method and feature.</summary>
    internal static IReadOnlyList<TellApart> Checks(Kind kind, Part asked, Part other) =>
    [
        .. PartDifferences.Compared(kind, asked, other)
            .SelectMany(pair => kind.Checks
                .Where(check => check.Feature == pair.Feature.Code && PartDifferences.Separates(check, pair.Asked, pair.Other) == Met.Yes)
                .Select(check => new TellApart(pair.Feature.Code, pair.Feature.Name, check.Method, check.Minutes, check.Method is Method.Photo or Method.Label, check.How)))
            .OrderBy(check => check.Minutes).ThenBy(check => check.Check).ThenBy(check => check.Feature, StringComparer.Ordinal),
    ];
}

using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Yard;

/// <summary>A yard list in words.</summary>
internal static class YardWords
{
    public static string Headline(BuildPlan plan, IReadOnlyList<YardPart> parts)
    {
        if (plan.Cost is null)
        {
            return plan.HeadlineText;
        }

        var pulled = parts.Count(part => part.BuyNew is null);
        var isNew = parts.Count - pulled;
        return parts.Count == 0 ? "The plan buys nothing, so there is nothing to look for." : string.Create(
            CultureInfo.InvariantCulture,
            $"{pulled} {(pulled == 1 ? "position" : "positions")} to look for in a yard{(isNew == 0 ? "" : $"; {isNew} more {(isNew == 1 ? "is" : "are")} bought new")}.");
    }

    /// <summary>Engines of the family on which its maker fitted the part.</summary>
    public static IReadOnlyList<string> SitsOn(FamilyFacts family, string part) =>
    [
        .. family.Fitments.Where(fitment => fitment.Part == part && fitment.Evidence?.IsRetracted != true)
            .Select(fitment => $"{family.FindVariant(fitment.Variant)?.Name ?? fitment.Variant}{Within(fitment.Span)}").Distinct(StringComparer.Ordinal),
    ];

    private static string Within(Span span)
    {
        string[] limits =
        [
            .. (span.BuiltFrom, span.BuiltTo) switch
            {
                (null, null) => Array.Empty<string>(),
                ({ } from, null) => [$"built from {from.Text}"],
                (null, { } to) => [$"built up to {to.Text}"],
                ({ } from, { } to) => [$"built {from.Text} to {to.Text}"],
            },
            .. (span.SerialFrom, span.SerialTo) switch
            {
                (null, null) => Array.Empty<string>(),
                ({ } from, null) => [string.Create(CultureInfo.InvariantCulture, $"serial from {from}")],
                (null, { } to) => [string.Create(CultureInfo.InvariantCulture, $"serial up to {to}")],
                ({ } from, { } to) => [string.Create(CultureInfo.InvariantCulture, $"serial {from} to {to}")],
            },
            .. span.Mark is { } mark ? [mark] : Array.Empty<string>(),
        ];
        return limits.Length == 0 ? "" : $", {string.Join(", ", limits)}";
    }
}

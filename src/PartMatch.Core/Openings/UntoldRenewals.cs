using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Openings;

/// <summary>
/// What is disturbed and of which no row of the books says what is renewed: neither with it nor for another. That it only stands in the way says nothing.
/// </summary>
internal static class UntoldRenewals
{
    /// <summary>A sentence, by the groups of the positions; none where all is told.</summary>
    public static IEnumerable<string> Of(BuildTerms terms, OpenedPlan opened)
    {
        var family = terms.Facts.Family;
        var told = Disturbance.Renewals(family, OpenedPlan.Engines(terms)).SelectMany(row => new[] { row.Opened, row.Renewed }).ToHashSet(StringComparer.Ordinal);
        var silent = family.Positions
            .Where(position => position.Group != WorkOrder.Consumables && opened.Disturbed.ContainsKey(position.Code) && !told.Contains(position.Code))
            .GroupBy(position => position.Group).OrderBy(group => group.Key, StringComparer.Ordinal).ToList();
        return silent.Count == 0 ? [] :
        [
            "Not recorded, and not in the sum: what is renewed (seals, gaskets, clips, fasteners) when "
                + string.Create(CultureInfo.InvariantCulture, $"{silent.Sum(group => group.Count())} of the positions are opened: ")
                + string.Join("; ", silent.Select(group => $"{group.Key.Replace('-', ' ')}: {FitWording.List(group.Select(position => position.Name))}")) + ".",
        ];
    }
}

using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Builds;

/// <summary>A part once the plan's works are done on it.</summary>
internal static class WorkedPart
{
    /// <summary>
    /// What a work changes becomes what the wished engine has there: a thread tapped to M11 is M11. The part itself is not changed; where the wished
    /// engine has no value of it either, nothing is known of it afterwards.
    /// </summary>
    public static Part Of(BuildTerms terms, Candidate candidate, IReadOnlySet<string> works)
    {
        var part = candidate.Parts[0];
        string[] changed =
        [
            .. works.Select(terms.Facts.Family.FindWork).OfType<Work>().SelectMany(work => work.Changes)
                .Select(change => change.Split('.', 2)).Where(change => change is [var position, _] && position == candidate.Position)
                .Select(change => change[1]).Distinct(StringComparer.Ordinal),
        ];
        if (changed.Length == 0)
        {
            return part;
        }

        var wished = terms.Facts.Family.FitmentsAt(terms.Target, candidate.Position).Select(fitment => fitment.Part).OfType<string>()
            .Select(terms.Facts.Family.FindPart).FirstOrDefault();
        return part with
        {
            Values =
            [
                .. part.Values.Where(value => !changed.Contains(value.Feature))
                    .Concat((wished?.Values ?? []).Where(value => changed.Contains(value.Feature)))
                    .OrderBy(value => value.Feature, StringComparer.Ordinal),
            ],
        };
    }
}

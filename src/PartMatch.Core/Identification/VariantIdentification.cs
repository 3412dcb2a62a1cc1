using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Identification;

/// <summary>Which variant is this engine, and are parts of others in it?</summary>
public static class VariantIdentification
{
    // Is there one at all? Ours, no source.
    private const decimal GlanceMinutes = 1;

    /// <summary>Decides how to tell the variants apart.</summary>
    /// <param name="variants">Codes of at least two variants of the family.</param>
    /// <remarks>Only positions whose access is recorded take part: what cannot be reached cannot be looked at.</remarks>
    public static TellApartOutcome Decide(FamilyFacts facts, IReadOnlyList<string> variants, TellApartTerms terms)
    {
        string[] codes = [.. variants.Distinct(StringComparer.Ordinal)];
        var asked = new TellApartAsked([], facts.Family.Code, codes, terms.Mode, terms.Mode == CheckMode.InHand ? terms.Tools : [], terms.Seen);
        SubjectCandidate[] candidates = [.. codes.Select(code => new SubjectCandidate(code, code, facts.FindVariant(code)?.Name ?? code, 1, null))];
        var reachable = facts.Positions.Where(position => position.AccessMinutes is not null).ToList();
        var subject = new IdentificationSubject(
            candidates, $"Taken as equally likely. {reachable.Count} of {facts.Positions.Count} positions have a recorded access and take part.",
            IdentificationSubject.Ordered(reachable.SelectMany(position => At(facts, position, codes))));
        return TellApartReasoning.Decide(subject, asked, terms, (_, _) => null);
    }

    private static IEnumerable<Observable> At(FamilyFacts facts, Position position, string[] variants)
    {
        if (facts.FindKind(position.Kind) is not { } kind)
        {
            yield break;
        }

        Fitment[][] fitted = [.. variants.Select(variant => facts.FitmentsAt(variant, position.Code).ToArray())];
        foreach (var method in new[] { Method.Photo, Method.Eye })
        {
            yield return new Observable(position, kind, Feature.Present, new Check(Feature.Present.Code, method, GlanceMinutes, null, null), [.. fitted.Select(rows => Present(rows))]);
        }

        foreach (var check in kind.Checks)
        {
            if (kind.FindFeature(check.Feature) is { Type: not FeatureType.Curve } feature)
            {
                yield return new Observable(position, kind, feature, check, [.. fitted.Select(rows => ValuesOf(facts, rows, check.Feature))]);
            }
        }
    }

    private static StatedValue[] Present(Fitment[] fitted) =>
    [
        .. fitted.Select(fitment => fitment.Part is null ? "no" : "yes").Distinct(StringComparer.Ordinal)
            .Select(ValueSelection.PresentAs).OfType<StatedValue>(),
    ];

    // Where one of the parts that may be there has no recorded value, nothing can be said of the variant. That nothing is there is seen.
    private static StatedValue[] ValuesOf(FamilyFacts facts, Fitment[] fitted, string feature)
    {
        KnownValue[] values =
        [
            .. fitted.Select(fitment => fitment.Part).Distinct(StringComparer.Ordinal)
                .Select(id => id is null ? Observable.NothingThere : facts.FindPart(id) is { } part ? ValueSelection.Of(part, feature) : NotRecorded.Instance),
        ];
        return Array.Exists(values, value => value is not StatedValue) ? [] : [.. values.OfType<StatedValue>()];
    }
}

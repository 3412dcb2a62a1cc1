using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Identification;

/// <summary>Which of these parts is it?</summary>
public static class PartIdentification
{
    /// <summary>Most parts that one question can name.</summary>
    public const int MostParts = 40;

    /// <summary>A part asked about alone is compared with at most so many of its look-alikes, so that its key is exact.</summary>
    internal const int MostLookAlikes = IdentificationKey.ExactUpTo - 1;

    // What the eye takes in at a glance. Ours, no source.
    private const decimal GlanceMinutes = 1;

    /// <summary>Decides how to tell the parts apart.</summary>
    /// <param name="ids">At least one, at most 40, each known to the base. One alone is compared with its look-alikes of medium and high danger.</param>
    public static TellApartOutcome Decide(LookAlikeFacts facts, IReadOnlyList<string> ids, TellApartTerms terms)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(ids.Count, MostParts);
        CataloguePart[] parts = [.. Candidates(facts, ids).Select(facts.FindPart)];
        var tools = terms.Mode == CheckMode.InHand ? terms.Tools : [];
        var asked = new TellApartAsked([.. parts.Select(part => part.Id ?? "")], null, [], terms.Mode, tools, terms.Seen);
        return TellApartReasoning.Decide(Subject(facts, parts), asked, terms, (one, other) => Relation(facts, parts[one], parts[other]));
    }

    /// <summary>The check to begin with where one number means several parts, in words; null where it means one, or no check helps.</summary>
    public static string? BestCheck(LookAlikeFacts facts, IReadOnlyList<string> ids)
    {
        var inHand = new TellApartTerms(CheckMode.InHand, TellApartTerms.AllTools, []);
        if (ids.Count is < 2 or > MostParts || Decide(facts, ids, inHand) is not TellApartDecided { Answer.Key.Check: { } check })
        {
            return null;
        }

        return string.Create(CultureInfo.InvariantCulture, $"{FitWording.AsSentence(check.Name)}, {LookAlikeWording.By(check.Method)}, {check.Minutes:0.##} min.");
    }

    private static IReadOnlyList<string> Candidates(LookAlikeFacts facts, IReadOnlyList<string> ids)
    {
        string[] different = [.. ids.Distinct(StringComparer.Ordinal)];
        return different is [var only] && facts.FindPart(only).Part is { } part
            ? [only, .. LookAlikeSearch.Dangerous(facts, part, null, MostLookAlikes)]
            : different;
    }

    private static IdentificationSubject Subject(LookAlikeFacts facts, CataloguePart[] parts)
    {
        SubjectCandidate[] candidates =
        [
            .. parts.Select(part => new SubjectCandidate(
                part.Id ?? "", Name(part), part.Part?.Name ?? "not described here", 1 + facts.Odds.OffersOf(part.Id ?? ""), part.Part)),
        ];
        var offers = parts.Sum(part => facts.Odds.OffersOf(part.Id ?? ""));
        var weights = offers == 0
            ? "Taken as equally likely: no offers are recorded."
            : $"Weighted by what is on offer: {offers} offers recorded, one added to each so that none is impossible.";
        return new IdentificationSubject(candidates, weights, IdentificationSubject.Ordered(Observables(parts)));
    }

    private static IEnumerable<Observable> Observables(CataloguePart[] parts)
    {
        Kind[] kinds = [.. parts.Select(part => part.Kind).OfType<Kind>().DistinctBy(kind => kind.Code)];
        var recorded = kinds.SelectMany(kind => kind.Checks, (kind, check) => (kind, check, feature: kind.FindFeature(check.Feature)))
            .Where(one => one.feature is { Type: not FeatureType.Curve })
            .Select(one => new Observable(
                null, one.kind, one.feature!, one.check, [.. parts.Select(part => ValuesOf(part, one.kind, one.check.Feature))])); // filtered just above
        return kinds.Length < 2 ? recorded : recorded.Concat(WhatItIs(parts, kinds));
    }

    private static StatedValue[] ValuesOf(CataloguePart part, Kind kind, string feature) =>
        part.Kind?.Code == kind.Code && part.Part is { } described && ValueSelection.Of(described, feature) is StatedValue value ? [value] : [];

    // A pump is no camshaft: the eye sees that, and so does a photo.
    private static IEnumerable<Observable> WhatItIs(CataloguePart[] parts, Kind[] kinds)
    {
        var feature = new Feature("kind", "what it is", FeatureType.Choice, null, [.. kinds.Select(kind => kind.Code)]);
        IReadOnlyList<IReadOnlyList<StatedValue>> values =
            [.. parts.Select(part => part.Kind is { } kind ? new[] { new StatedChoices([kind.Code], kind.Name, EvidenceGrade.MakersDocument, []) } : [])];
        return new[] { Method.Photo, Method.Eye }
            .Select(method => new Observable(null, null, feature, new Check("kind", method, GlanceMinutes, null, null), values));
    }

    // One-way: the newer does for the older. Whoever needs the newer is not served with the older.
    private static string? Relation(LookAlikeFacts facts, CataloguePart one, CataloguePart other)
    {
        var (relation, text) = PartRelations.Between(facts.Supersessions, facts.Pairs, one.Id ?? "", other.Id ?? "");
        var why = text is null ? "Found to be one part under two numbers." : $"{text.TrimEnd('.')}.";
        return relation switch
        {
            PartRelation.SamePart => $"{why} They need not be told apart where that holds.",
            PartRelation.NewerNumber => $"{why} {Within(older: one, newer: other)}",
            PartRelation.OlderNumber => $"{why} {Within(older: other, newer: one)}",
            _ => null,
        };
    }

    private static string Within(CataloguePart older, CataloguePart newer) =>
        $"Where that holds they need not be told apart by whoever needs {Name(older)}; whoever needs {Name(newer)} has to know which one it is.";

    private static string Name(CataloguePart part) => part.Part?.Number ?? part.Id ?? "";
}

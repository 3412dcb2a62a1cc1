using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>Judges a part feature by feature against what the position demands: explicit needs, else the values of the part the maker fitted.</summary>
internal static class DemandReasons
{
    private sealed record Demand(
        string Feature, Effect Effect, Relation Relation, KnownValue Value, decimal Allowance, string From, string? FromPart, Rule? Rule, Evidence? NeedEvidence,
        string? Note);

    /// <param name="fitted">The alternative judged against; null where nothing is fitted or nothing is recorded.</param>
    /// <param name="isNothing">The position is known to carry nothing: then only explicit needs speak.</param>
    /// <param name="replaced">Feature and effect pairs for which a joint with a known neighbour speaks instead of the default demand.</param>
    public static IEnumerable<Reason> Judge(
        FamilyFacts facts, FitQuestion question, Part part, Kind kind, Part? fitted, bool isNothing, IReadOnlySet<(string Feature, Effect Effect)> replaced)
    {
        Need[] needs =
        [
            .. facts.Needs.Where(need => need.Variant == question.Variant && need.Position == question.Position && need.Evidence?.IsRetracted != true),
        ];
        var explicitly = needs.Select(need => FromNeed(need, kind));
        var byDefault = isNothing
            ? []
            : kind.Rules
                .Where(rule => !needs.Any(need => need.Feature == rule.Feature && need.Effect == rule.Effect))
                .Where(rule => !replaced.Contains((rule.Feature, rule.Effect)))
                .Select(rule => FromFittedPart(rule, fitted));

        Demand[] demands =
        [
            .. explicitly.Concat(byDefault)
                .Where(demand => !part.IsNothing || demand.Feature == Feature.Present.Code) // nothing has no other feature
                .OrderBy(demand => demand.Feature, StringComparer.Ordinal).ThenBy(demand => demand.Effect),
        ];
        Reason[] reasons = [.. demands.Select(demand => Judge(facts, question, part, kind, demand))];
        return demands.Zip(reasons, (demand, reason) => SettingOf(facts, question, kind, fitted, demand, reason, reasons) is { } work ? OnceDone(work, reason) : reason);
    }

    /// <summary>The axes hold once the works are done that the answer names.</summary>
    public static Reason OnceDone(Work work, Reason reason) =>
        reason with { Met = Met.Yes, OnceDone = work.Code, Text = $"{reason.Text} Once this is done it runs the same: {work.Name}." };

    /// <summary>
    /// The work that sets what alters how the engine runs: one that the part needs because of this very feature, and that changes it. Afterwards the part has
    /// what the engine as built has there.
    /// </summary>
    private static Work? SettingOf(
        FamilyFacts facts, FitQuestion question, Kind kind, Part? fitted, Demand demand, Reason reason, IReadOnlyList<Reason> reasons)
    {
        if (reason is not { Effect: Effect.Alters, Met: Met.No } || fitted is null)
        {
            return null;
        }

        string[] changed = [$"{question.Position}.{demand.Feature}", $"{kind.Code}.{demand.Feature}"];
        var isMet = FeatureComparison.Compare(ValueSelection.Of(fitted, demand.Feature), demand.Relation, demand.Value, demand.Allowance) == Met.Yes;
        return !isMet
            ? null
            : reasons.Where(other => other is { Effect: Effect.Work, Met: Met.No, Work: not null } && other.Feature == demand.Feature)
                .Select(other => facts.FindWork(other.Work!)) // filtered just above
                .FirstOrDefault(work => work?.Changes.Any(changed.Contains) == true);
    }

    private static Demand FromNeed(Need need, Kind kind)
    {
        var rule = kind.FindRule(need.Feature, need.Effect);
        return new Demand(
            need.Feature, need.Effect, need.Relation, ValueSelection.Of(need.Demand, need.Evidence), rule?.Allowance ?? 0, "need", null, rule, need.Evidence,
            need.Note);
    }

    private static Demand FromFittedPart(Rule rule, Part? fitted) => new(
        rule.Feature, rule.Effect, rule.Relation, fitted is null ? NotRecorded.Instance : ValueSelection.Of(fitted, rule.Feature), rule.Allowance, "fitted-part",
        fitted?.Id, rule, null, null);

    private static Reason Judge(FamilyFacts facts, FitQuestion question, Part part, Kind kind, Demand demand)
    {
        var has = ValueSelection.Of(part, demand.Feature);

        // One example need not be as the maker made it.
        var isItself = demand.From == "fitted-part" && demand.FromPart == part.Id && !question.IsMeasured(demand.Feature);
        var met = isItself ? Met.Yes : FeatureComparison.Compare(has, demand.Relation, demand.Value, demand.Allowance);
        var feature = kind.FindFeature(demand.Feature);
        var effect = demand.Effect;
        var text = Sentence(question.Variant, feature, has, demand, met, isItself);
        return new Reason("", ReasonBy.Feature, effect == Effect.Alters ? Axis.Runs : Axis.Mounts, met, text)
        {
            Feature = demand.Feature,
            Relation = demand.Relation,
            Part = FitWording.Shown(has, part: part.Id),
            Need = FitWording.Asked(demand.Value, demand.From, demand.FromPart),
            Allowance = demand.Value is StatedQuantity && demand.Allowance > 0
                ? FitWording.Shown(new Interval(demand.Allowance, demand.Allowance), AllowanceUnit(feature))
                : null,
            Difference = Difference(has, demand.Value),
            Room = demand.Value is StatedQuantity wants ? FeatureComparison.SurelyAccepted(demand.Relation, wants, demand.Allowance).Width : null,
            Effect = effect,
            Work = effect == Effect.Work ? demand.Rule?.Work : null,
            Consequence = demand.Rule?.Consequence ?? Consequence.Loss,
            Grade = Weakest(has, demand.Value),
            Mend = effect == Effect.Work && met == Met.No && demand.Rule?.Work is { } work ? facts.FindWork(work)?.Name ?? work : null,
            Cited = EvidenceOf([has, demand.Value], demand.NeedEvidence),
        };
    }

    /// <summary>The weakest grade among values; null when one of them is not a value.</summary>
    public static EvidenceGrade? Weakest(params IReadOnlyList<KnownValue> values) =>
        values.All(value => value is StatedValue) ? values.Cast<StatedValue>().Min(value => value.Grade) : null;

    /// <summary>The same, with the evidence of the limit or rule they are held against.</summary>
    public static EvidenceGrade? Weakest(Evidence? ofTheRule, params IReadOnlyList<KnownValue> values) =>
        Weakest(values) is { } grade ? (EvidenceGrade)Math.Min((int)grade, (int)ValueSelection.GradeOf(ofTheRule)) : null;

    public static IReadOnlyList<Evidence> EvidenceOf(IEnumerable<KnownValue> values, Evidence? more) =>
    [
        .. values.SelectMany(value => value switch
        {
            StatedValue stated => stated.Evidence,
            DisputedValue disputed => disputed.Evidence,
            _ => [],
        }).Concat(more is null ? [] : [more]),
    ];

    private static Unit? AllowanceUnit(Feature? feature) => feature?.Unit is { } unit ? unit with { Offset = 0 } : null;

    private static ComparedValue? Difference(KnownValue has, KnownValue wants) =>
        has is StatedQuantity left && wants is StatedQuantity right
            ? FitWording.Shown(new Interval(left.Nominal - right.Nominal, left.Nominal - right.Nominal), right.Unit with { Offset = 0 })
            : null;

    private static string Sentence(string variant, Feature? feature, KnownValue has, Demand demand, Met met, bool isItself)
    {
        if (demand.Feature == Feature.Present.Code && demand.Value is StatedChoices { Choices: [var wanted] } && demand.From == "need")
        {
            var there = FitWording.Text(has) == "yes" ? "there is a part here" : "there is no part here";
            var demanded = met == Met.Yes ? "" : wanted == "yes" ? " one" : " none";
            return $"{there}{(met == Met.Yes ? ", as" : ", but")} {variant} demands{demanded}.{NoteOf(demand, met)}";
        }

        var name = feature?.Name ?? demand.Feature;
        if (isItself)
        {
            return has is StatedValue
                ? $"{name}: {FitWording.Text(has)}, as the maker fitted it.{FitWording.Notes(has)}"
                : $"{name}: as the maker fitted it; its value is {FitWording.Text(has)}.";
        }

        var wants = demand.From == "need" ? $"{variant} demands {FitWording.Wanted(demand.Relation, demand.Value)}" : AsBuilt(variant, demand);
        var against = wants + Accepted(feature, demand);
        var notes = FitWording.Notes(has, demand.Value);
        return met switch
        {
            Met.Yes => $"{name}: this part has {FitWording.Text(has)}; {against}.{notes}",
            Met.No => $"{name}: this part has {FitWording.Text(has)}, but {against}.{NoteOf(demand, met)}{notes}",
            _ => $"{name}: {WhatIsOpen(has, demand.Value, against)}{notes}",
        };
    }

    /// <summary>The note of the book as a sentence of its own; said only where the demand is not met.</summary>
    private static string NoteOf(Demand demand, Met met) =>
        met == Met.No && (demand.Note ?? demand.Rule?.Note) is { Length: > 0 } note ? $" {FitWording.AsSentence(note).TrimEnd('.')}." : "";

    private static string AsBuilt(string variant, Demand demand)
    {
        var built = $"{variant} as built has {FitWording.Text(demand.Value)}";
        return (demand.Value, demand.Relation) switch
        {
            (not StatedValue, _) or (_, Relation.Same) => built,
            (_, Relation.OneOf) => $"{built}, and one of those is needed",
            (_, Relation.Covers) => $"{built}, and all of that is needed",
            _ => $"{built}, and {FitWording.Of(demand.Relation)} that is needed",
        };
    }

    /// <summary>How far beyond the demand is still accepted, where the rule says so.</summary>
    private static string Accepted(Feature? feature, Demand demand)
    {
        if (demand.Value is not StatedQuantity || demand.Allowance == 0)
        {
            return "";
        }

        var beyond = FitWording.Number(demand.Allowance, AllowanceUnit(feature));
        return demand.Relation switch
        {
            Relation.AtLeast => $" ({beyond} less is accepted)",
            Relation.AtMost => $" ({beyond} more is accepted)",
            _ => $" ({beyond} either way is accepted)",
        };
    }

    private static string WhatIsOpen(KnownValue has, KnownValue wants, string against) => (has, wants) switch
    {
        (NotRecorded, NotRecorded) => "recorded neither for this part nor for what the maker fitted.",
        (NotRecorded, _) => $"not recorded for this part; {against}.",
        (_, NotRecorded) => $"not recorded for what the maker fitted; this part has {FitWording.Text(has)}.",
        (DisputedValue, _) or (_, DisputedValue) => $"the sources exclude each other. This part: {FitWording.Text(has)}; {against}.",
        _ when has.GetType() != wants.GetType() => $"recorded as different sorts of value, so not compared. This part: {FitWording.Text(has)}; {against}.",
        _ => $"too close to call with the spread and uncertainty recorded. This part has {FitWording.Text(has)}; {against}.",
    };
}

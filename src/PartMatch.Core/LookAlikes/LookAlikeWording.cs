using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>What a look-alike row says in words.</summary>
internal static class LookAlikeWording
{
    /// <summary>The two factors of the danger.</summary>
    public static string Danger(LookAlikeFacts facts, LookAlikePair pair) => $"Ease {pair.EaseAmong(facts.Odds)} ({Ease(pair)}{CameInstead(facts, pair)}) × harm {pair.Harm} ({Harm(facts, pair)}).";

    /// <summary>The cheapest check, or that there is none, and why.</summary>
    public static string TellApart(LookAlikePair pair, IReadOnlyList<PartDifference> differs, IReadOnlyList<TellApart> checks) => pair switch
    {
        _ when checks is [var cheapest, ..] => $"Cheapest check: {cheapest.Text}.",
        { Asked.Id: null } => "The number asked about is in no book: nothing is recorded to compare with.",
        _ when pair.Asked.Id == pair.Other.Id => "One part: there is nothing to tell apart.",
        _ when pair.Asked.Part is null || pair.Other.Part is null => "One of the two is not described here: nothing is recorded to compare with.",
        _ when !pair.Asked.IsSameKindAs(pair.Other) => $"Different kinds of part: {KindName(pair.Asked)} and {KindName(pair.Other)}.",
        _ when differs.Count == 0 => "Nothing recorded separates them: no recorded value of the one differs from the other's.",
        _ => "Nothing recorded separates them: no check shows the difference once tolerances and the uncertainty of the check are counted.",
    };

    /// <summary>What has to be asked before anything else; null when the number is plain.</summary>
    public static string? Question(AskedNumber asked)
    {
        string[] forms = [.. asked.Written.Select(number => number.Written).Distinct(StringComparer.Ordinal)];
        string[] makers = [.. asked.Written.Select(number => number.Maker).Distinct(StringComparer.Ordinal)];
        return asked switch
        {
            { Known.Count: 0 } => null,
            { Narrows: true } => $"This stands as a casting mark or a grade on {(asked.Known.Count == 1 ? "one part known here, perhaps on others" : $"{asked.Known.Count} parts")}: it narrows, never identifies. Which part is it?",
            { Known.Count: > 1 } when makers.Length > 1 => $"{makers.Length} makers use this number: {string.Join(", ", makers)}. Whose is it?",
            { Known.Count: > 1 } => $"This number can mean {asked.Known.Count} parts. Which is it?",
            _ when forms.Length > 1 => $"Written {string.Join(" or ", forms)}: the same once separators are dropped, and kept apart here. Which of them stands on the part?",
            _ => null,
        };
    }

    /// <summary>How a check is made: "by photo", "with a caliper".</summary>
    public static string By(Method method) => method switch
    {
        Method.Label => "by its label",
        Method.Count => "by counting",
        Method.SteelRule => "with a steel rule",
        Method.Caliper => "with a caliper",
        Method.Gauge => "with a gauge",
        Method.Scale => "on a scale",
        Method.Meter => "with a meter",
        Method.Bench => "on the bench",
        _ => $"by {Codes.Of(method)}",
    };

    private static string CameInstead(LookAlikeFacts facts, LookAlikePair pair) =>
        facts.Odds.CameInstead(pair.Asked.Id, pair.Other.Id) ? ", and delivered in place of one another" : "";

    private static string Ease(LookAlikePair pair) => (pair.Number, pair.SameToTheEye) switch
    {
        (null, true) => "the same to the eye",
        (null, false) => "somebody found them mixed up",
        (_, true) => "near in number and the same to the eye",
        ({ Edits: 0 }, _) => "the same number",
        ({ FoldedEdits: 0 }, _) => "only look-alike characters differ",
        _ => "near in number",
    };

    private static string Harm(LookAlikeFacts facts, LookAlikePair pair)
    {
        if (pair.Asked.Id is not null && pair.Asked.Id == pair.Other.Id)
        {
            return "the same part";
        }

        if (pair.Worst is not { } worst)
        {
            return pair.Harm == 0 ? "each fits where the other is fitted" : "neither is fitted anywhere here, so what a mix-up does is not known";
        }

        var family = facts.Families.First(family => family.Family.Code == worst.Family);
        var place = $"{family.FindPosition(worst.Position)?.Name ?? worst.Position} of {family.FindVariant(worst.Variant)?.Name ?? worst.Variant}";
        return $"{worst.Part ?? "the number asked about"} as {place}: {FitWording.InWords(Codes.Of(worst.Headline))}{Consequence(worst.Consequence)}";
    }

    private static string Consequence(Consequence? consequence) => consequence switch
    {
        null => "",
        Catalogue.Consequence.Loss => ", loss of output",
        Catalogue.Consequence.Damage => ", engine damage",
        { } other => $", {Codes.Of(other)}",
    };

    private static string KindName(CataloguePart part) => part.Kind?.Name ?? FitWording.InWords(part.Part?.Kind ?? "not recorded");
}

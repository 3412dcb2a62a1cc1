using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>What a look-alike row says in words.</summary>
internal static class LookAlikeWording
{
    /// <summary>The two factors of the danger.</summary>
    public static string Danger(LookAlikePair pair) => $"Ease {pair.Ease} ({Ease(pair)}) × harm {pair.Harm} ({Harm(pair)}).";

    /// <summary>The cheapest check, or that there is none.</summary>
    public static string TellApart(LookAlikePair pair, IReadOnlyList<TellApart> checks) => (pair, checks) switch
    {
        (_, [var cheapest, ..]) => $"Cheapest check: {cheapest.Text}.",
        ({ Asked.Id: null }, _) => "The number asked about is in no book: nothing is recorded to compare with.",
        (var one, _) when one.Asked.Id == one.Other.Id => "One part: there is nothing to tell apart.",
        (var one, _) when one.Asked.Part is null || one.Other.Part is null => "One of the two is not described here: nothing is recorded to compare with.",
        (var one, _) when !one.Asked.IsSameKindAs(one.Other) => $"Different kinds of part: {KindName(one.Asked)} and {KindName(one.Other)}.",
        _ => "Nothing recorded separates them: no check of this kind tells their recorded values apart, tolerances and the uncertainty of the check counted.",
    };

    private static string Ease(LookAlikePair pair) => (pair.Number, pair.SameToTheEye) switch
    {
        (null, _) => "the same to the eye",
        (_, true) => "near in number and the same to the eye",
        ({ Edits: 0 }, _) => "the same number",
        ({ FoldedEdits: 0 }, _) => "only look-alike characters differ",
        _ => "near in number",
    };

    private static string Harm(LookAlikePair pair)
    {
        if (pair.Asked.Id is not null && pair.Asked.Id == pair.Other.Id)
        {
            return "the same part";
        }

        if (pair.Worst is not { } worst)
        {
            return pair.Harm == 0 ? "each fits where the other is fitted" : "neither is fitted anywhere here, so what a mix-up does is not known";
        }

        var consequence = worst.Consequence is { } bad ? $", {FitWording.InWords(Codes.Of(bad))}" : "";
        return $"{worst.Part ?? "the number asked about"} at {worst.Position} of {worst.Variant}: {FitWording.InWords(Codes.Of(worst.Headline))}{consequence}";
    }

    private static string KindName(CataloguePart part) => part.Kind?.Name ?? FitWording.InWords(part.Part?.Kind ?? "not recorded");
}

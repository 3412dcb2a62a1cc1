using System.Globalization;
using System.Text;
using PartMatch.Core.Identification;

namespace PartMatch.Core.Listings;

/// <summary>What to ask the seller, in one message that does not say which answer is hoped for.</summary>
internal static class SellerAsk
{
    /// <param name="sold">The numbers that what is sold is said to bear, judged.</param>
    /// <param name="tellApart">Questions that separate what is needed from what it is taken for; empty where nothing does.</param>
    public static SellerQuestions? Write(
        ListingQuestion question, IReadOnlyList<JudgedNumber> sold, IReadOnlyList<JudgedOffer> offers, IReadOnlyList<Contradiction> contradictions, SellerMessage? tellApart)
    {
        string[] questions =
        [
            .. contradictions.Where(one => one.Code != "gtin-check-digit").Select(one => one.Text),
            .. NumberQuestions(sold),
            .. (tellApart?.Shots ?? []).Select(shot => $"A photo of the {LowerFirst(shot.Name)}.{(shot.How is null ? "" : " " + Sentence(shot.How))}"),
            .. tellApart is { Shots.Count: 0 } ? tellApart.Questions.Select(one => one.Text) : [],
            .. OfferQuestions(question, offers),
        ];
        string[] asked = [.. questions.Distinct(StringComparer.Ordinal)];
        return asked.Length == 0 ? null : new SellerQuestions(asked, Letter(asked));
    }

    private static IEnumerable<string> NumberQuestions(IReadOnlyList<JudgedNumber> sold)
    {
        if (sold.Count == 0 || sold.Any(one => one.Within is not null || one.Read == NumberReading.LookAlikeCharacters
            || one.Verdict is NumberVerdict.Unknown or NumberVerdict.ClaimedOnly or NumberVerdict.NarrowsOnly or NumberVerdict.OlderNumber or NumberVerdict.LookAlike))
        {
            yield return "Which numbers stand on the part itself? All of them, exactly as they stand there, and a sharp photo of each.";
        }

        if (sold.Any(one => one.Verdict == NumberVerdict.ClaimedOnly))
        {
            yield return "Who makes it, and has it been fitted to such an engine?";
        }
    }

    private static IEnumerable<string> OfferQuestions(ListingQuestion question, IReadOnlyList<JudgedOffer> offers)
    {
        var open = offers.Where(offer => offer.Headline != ListingHeadline.LeaveIt).ToList();
        if (open.Count == 0 && offers.Count > 0)
        {
            yield break;
        }

        if (open.Count == 0 || open.Exists(one => one.Offer.Price is not ReadPrice.Stated))
        {
            yield return "What does it cost, in which currency, and for how many pieces?";
        }

        if (open.Count == 0 || open.Exists(one => one.Offer.Condition == ItemCondition.NotStated))
        {
            yield return "What condition is it in: new, rebuilt, used, damaged?";
        }

        if (open.Exists(one => one.Untested is not null))
        {
            yield return "Why has it not been tested, and can you try it before it is sent?";
        }

        if (question.Level is { } needed && open.Exists(one => one.Offer.Level == AssemblyLevel.NotStated || AssemblyLevels.Missing(one.Offer.Level, needed).Count > 0))
        {
            yield return $"What exactly comes with it? I need: {string.Join("; ", AssemblyLevels.Missing(AssemblyLevel.Bare, needed).Prepend("the bare block"))}.";
        }

        if (open.Count == 0 || open.Exists(one => one.Offer.Shipping is null))
        {
            yield return "What does sending cost, and how long does it take?";
        }

        if (open.Count == 0 || open.Exists(one => one.Offer.Terms.Returnable == Returnable.NotStated))
        {
            yield return "Can it be sent back if it is another number, within how many days, at what charge, and who pays for the way back?";
        }
    }

    private static string Letter(string[] asked)
    {
        var text = new StringBuilder("Hello,\n\nI am interested in what you offer. Before I buy, could you please tell me:\n\n");
        for (var index = 0; index < asked.Length; index++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{index + 1}. {asked[index]}\n");
        }

        return text.Append("\nThank you.").ToString();
    }

    private static string LowerFirst(string text) => text.Length == 0 ? text : char.ToLowerInvariant(text[0]) + text[1..];

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..].TrimEnd('.') + ".";
}

using System.Globalization;

namespace PartMatch.Core.Builds;

/// <summary>Something that the build does not say, for want of which offers do not count.</summary>
/// <param name="Field">Member of the build that would say it: <c>rates</c>, <c>importPercentWhereNotSaid</c>.</param>
/// <param name="Offers">How many offers it keeps out. One that lacks several things is counted for one of them.</param>
/// <param name="Text">What is missing, and what to state.</param>
public sealed record NotStated(string Field, int Offers, string Text)
{
    /// <summary>What keeps out most first.</summary>
    internal static IReadOnlyList<NotStated> Of(OfferScreen screen, string currency)
    {
        int Count(string why) => screen.LeftOut.Count(one => one.Why == why);
        var rates = screen.LeftOut.SelectMany(one => new[] { one.Offer.Price.Currency, one.Offer.Shipping?.Currency }).OfType<string>().Distinct(StringComparer.Ordinal)
            .Select(other => Say("rates", Count(OfferScreen.NoRate(other)) + Count($"sending {OfferScreen.NoRate(other)}"), $"in {other}, for which there is no rate: say how much 1 {other} is in {currency}"));
        return
        [
            .. rates.Append(Say("importPercentWhereNotSaid", Count(OfferScreen.ImportNotKnown), "of sellers whose import charge nobody knows: say what to reckon where it is not said, 0 for none"))
                .Append(Say("sendingWhereNotSaid", Count(OfferScreen.SendingNotKnown), "of sellers whose sending nobody knows: say what to reckon where it is not said"))
                .Append(Say("daysWhereNotSaid", Count(OfferScreen.DaysNotSaid), "of sellers who do not say how long it takes: say how many days to reckon where it is not said"))
                .Where(one => one.Offers > 0).OrderByDescending(one => one.Offers).ThenBy(one => one.Text, StringComparer.Ordinal),
        ];
    }

    private static NotStated Say(string field, int offers, string what) =>
        new(field, offers, string.Create(CultureInfo.InvariantCulture, $"{offers} {(offers == 1 ? "offer does" : "offers do")} not count, {what}."));
}

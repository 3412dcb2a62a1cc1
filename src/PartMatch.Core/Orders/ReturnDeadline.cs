using System.Globalization;
using PartMatch.Core.Buying;
using PartMatch.Core.Listings;

namespace PartMatch.Core.Orders;

/// <summary>By when can it go back, and on whose cost, as far as the seller's terms say?</summary>
internal static class ReturnDeadline
{
    /// <summary>Counted from the day after it arrived; null where nothing is known, or it is not taken back.</summary>
    public static DateOnly? Of(OfferReturns? returns, DateOnly? arrivedOn) =>
        returns is { Returnable: not Returnable.No, Days: { } days and <= 3660 } && arrivedOn is { } day ? day.AddDays((int)days) : null;

    /// <summary>What was agreed on sending it back, in words.</summary>
    public static string Say(OfferReturns? returns, DateOnly? arrivedOn)
    {
        if (returns is null)
        {
            return "On what terms it goes back was not recorded: ask before sending it.";
        }

        if (returns.Returnable == Returnable.No)
        {
            return "The seller said that it does not go back. What is not what was ordered may have to be taken back all the same: local law says so or not.";
        }

        var by = Of(returns, arrivedOn) is { } last
            ? string.Create(CultureInfo.InvariantCulture, $"It can go back until {last:yyyy-MM-dd}, {returns.Days} days after it came")
            : returns.Days is { } days ? string.Create(CultureInfo.InvariantCulture, $"It can go back within {days} days after it came") : "By when it has to go back was not said: ask";
        var restocking = returns.RestockingPercent switch
        {
            null => "whether something is kept back was not said",
            0 => "nothing is kept back",
            { } percent => string.Create(CultureInfo.InvariantCulture, $"{percent:0.##} % is kept back; whether also of what came wrong, ask"),
        };
        var freight = returns.FreightBack switch
        {
            FreightBack.Seller => "the seller pays for sending it",
            FreightBack.Buyer => "you pay for sending it; where it is not what you ordered, ask the seller to",
            _ => "who pays for sending it was not said: ask",
        };
        return $"{by}; {restocking}; {freight}.";
    }
}

using System.Globalization;

namespace PartMatch.Core.Buying;

/// <summary>How long ago an offer was seen.</summary>
/// <param name="Days">Up to the day of the question; negative where it was seen after that.</param>
/// <param name="Old">More days than the question lets pass?</param>
public sealed record OfferAge(DateOnly SeenOn, int Days, bool Old, string Text)
{
    /// <param name="staleAfter">Days; on that many it is not old yet.</param>
    public static OfferAge Of(DateOnly seenOn, DateOnly on, int staleAfter)
    {
        var days = on.DayNumber - seenOn.DayNumber;
        var isOld = days > staleAfter;
        var seen = days switch
        {
            0 => string.Create(CultureInfo.InvariantCulture, $"seen on {on:yyyy-MM-dd}"),
            1 => string.Create(CultureInfo.InvariantCulture, $"seen 1 day before {on:yyyy-MM-dd}"),
            -1 => string.Create(CultureInfo.InvariantCulture, $"seen 1 day after {on:yyyy-MM-dd}"),
            < 0 => string.Create(CultureInfo.InvariantCulture, $"seen {-days} days after {on:yyyy-MM-dd}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"seen {days} days before {on:yyyy-MM-dd}"),
        };
        return new OfferAge(seenOn, days, isOld, isOld
            ? string.Create(CultureInfo.InvariantCulture, $"old: {seen}, more than {staleAfter} days; ask whether it still stands")
            : seen);
    }
}

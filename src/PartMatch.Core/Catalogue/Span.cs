using System.Globalization;

namespace PartMatch.Core.Catalogue;

/// <summary>From–to by build date, engine serial number, or both; both ends included; a missing end is open.</summary>
/// <param name="Mark">The visible mark that shows the change, where one is recorded.</param>
public sealed record Span(BuildDate? BuiltFrom, BuildDate? BuiltTo, long? SerialFrom, long? SerialTo, string? Mark = null)
{
    public static Span Always { get; } = new(null, null, null, null);
}

/// <summary>A date as a book writes it: a month, or a day.</summary>
/// <param name="Text"><c>2016-05</c> or <c>2016-05-23</c>.</param>
/// <param name="First">First day it can mean.</param>
/// <param name="Last">Last day it can mean: the same for a day, the end of the month for a month.</param>
public sealed record BuildDate(string Text, DateOnly First, DateOnly Last)
{
    /// <summary>Reads <c>YYYY-MM</c> or <c>YYYY-MM-DD</c>, or gives null.</summary>
    public static BuildDate? Find(string text)
    {
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return new BuildDate(text, day, day);
        }

        return DateOnly.TryParseExact(text + "-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var first)
            ? new BuildDate(text, first, first.AddDays(CultureInfo.InvariantCulture.Calendar.GetDaysInMonth(first.Year, first.Month) - 1))
            : null;
    }
}

using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace PartMatch.Core.LookAlikes;

/// <summary>A row's rank in a list: most dangerous first, then most offered, then cheapest, then key, then part. No two rows share one.</summary>
/// <param name="Danger">Ease × harm.</param>
/// <param name="Offers">Recorded of the look-alike: of two equally dangerous ones the commoner is met first.</param>
/// <param name="Cost">Infinite when only the eye found the row.</param>
internal sealed record ListRank(int Danger, int Offers, double Cost, string Key, string Part) : IComparable<ListRank>
{
    // A key holds no control character.
    private const char Separator = '\n';

    public int CompareTo(ListRank? other) =>
        other is null ? 1
        : Danger != other.Danger ? other.Danger.CompareTo(Danger)
        : Offers != other.Offers ? other.Offers.CompareTo(Offers)
        : Cost != other.Cost ? Cost.CompareTo(other.Cost)
        : string.CompareOrdinal(Key, other.Key) is not 0 and var byKey ? byKey
        : string.CompareOrdinal(Part, other.Part);

    /// <summary>The rank as a cursor: opaque text that is safe in an address.</summary>
    public string AsCursor() =>
        Base64Url.EncodeToString(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture,
            $"{Danger}{Separator}{Offers}{Separator}{Cost:R}{Separator}{Key}{Separator}{Part}")));

    /// <summary>The rank of a cursor, or null when the text is none.</summary>
    public static ListRank? Find(string cursor)
    {
        if (!Base64Url.IsValid(cursor))
        {
            return null;
        }

        var pieces = Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor)).Split(Separator, 5);
        return pieces.Length == 5
            && int.TryParse(pieces[0], NumberStyles.None, CultureInfo.InvariantCulture, out var danger)
            && int.TryParse(pieces[1], NumberStyles.None, CultureInfo.InvariantCulture, out var offers)
            && double.TryParse(pieces[2], NumberStyles.Float, CultureInfo.InvariantCulture, out var cost)
                ? new ListRank(danger, offers, cost, pieces[3], pieces[4])
                : null;
    }
}

/// <summary>One page of an ordered list.</summary>
/// <param name="Cursor">Asks for the next page; null on the last one.</param>
internal sealed record ListPage<T>(IReadOnlyList<T> Rows, string? Cursor);

internal static class ListPage
{
    /// <param name="rows">The whole list, in the order of its ranks.</param>
    /// <param name="cursor">The rank of the last row of the page before; rows that came or went since then shift nothing.</param>
    /// <exception cref="ArgumentException">The limit is below 1, or the cursor is none.</exception>
    public static ListPage<T> Of<T>(IReadOnlyList<T> rows, Func<T, ListRank> rankOf, int limit, string? cursor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, 1);
        var after = cursor is null ? null : ListRank.Find(cursor) ?? throw new ArgumentException($"'{cursor}' is not a cursor of this list.", nameof(cursor));
        var rest = after is null ? rows : [.. rows.SkipWhile(row => rankOf(row).CompareTo(after) <= 0)];
        T[] page = [.. rest.Take(limit)];
        return new ListPage<T>(page, page.Length < rest.Count ? rankOf(page[^1]).AsCursor() : null);
    }
}

namespace PartMatch.Core.Buying;

/// <summary>How a document was read as a price list.</summary>
public abstract record PriceListReading
{
    private PriceListReading()
    {
    }

    /// <param name="Tables">Of a page: which of its tables this is; null for a document that is one table.</param>
    public sealed record Read(PriceListTable Table, PriceListTables? Tables = null) : PriceListReading;

    /// <param name="Found">With the line where there is one.</param>
    /// <param name="Field">What of the question is at fault.</param>
    public sealed record Unreadable(string Found, string Expected, string Mend, string Field = "body") : PriceListReading;
}

/// <summary>The tables of a page that could be a price list.</summary>
/// <param name="Taken">Which of them is read.</param>
/// <param name="Because">Why that one.</param>
/// <param name="Notes">What of it was left out, and what was odd about the page.</param>
public sealed record PriceListTables(int Taken, string Because, IReadOnlyList<OfferedTable> Offered, IReadOnlyList<string> Notes);

/// <param name="Table">Its place on the page, from 1; tables that only lay out the page are counted and not offered.</param>
public sealed record OfferedTable(int Table, string? Caption, IReadOnlyList<string> Heads, int Rows);

using System.Globalization;
using System.Text;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Orders;

namespace PartMatch.Web.Orders;

/// <summary>What is to be ordered and what is under way, by seller, as a table (RFC 4180).</summary>
internal static class ShoppingList
{
    public const string Csv = "text/csv";

    private static readonly string[] _heads =
        ["seller", "state", "order", "offer", "part", "number_as_written", "name", "packs", "pieces", "price_of_pack", "currency", "for", "there_on", "mind"];

    public static string Write(BuildPlan plan, IReadOnlyList<Order> orders)
    {
        var toBuy = plan.Baskets.SelectMany(basket => basket.Items.Select(item => new[]
        {
            basket.Seller, "to-order", "", item.Offer, item.Part ?? "", item.NumberAsWritten ?? "", item.Name, Whole(item.Packs),
            item.PiecesInPack is { } each ? Whole(each * item.Packs) : "", item.Price.Amount, item.Price.Currency, string.Join(' ', item.For), Day(item.ArrivesOn),
            string.Join("; ", item.Flags),
        }));
        var underWay = orders.SelectMany(order => order.Lines.Where(line => line.State is not (LineState.Cancelled or LineState.Returned or LineState.Refunded)).Select(line => new[]
        {
            order.Terms.Seller ?? "", Codes.Of(line.State), Whole(order.Number), line.Agreed.Offer ?? "", line.Agreed.Part, line.Agreed.NumberAsWritten ?? "", line.Agreed.Name, "",
            Whole(line.Agreed.Pieces), "", "", string.Join(' ', line.Agreed.For), line.ArrivedOn is { } day ? Day(day) : order.Terms.ExpectedOn ?? "", "",
        }));
        var text = new StringBuilder();
        foreach (var row in toBuy.Concat(underWay).OrderBy(row => row[0], StringComparer.Ordinal).Prepend(_heads))
        {
            text.AppendJoin(',', row.Select(Cell)).Append("\r\n");
        }

        return text.ToString();
    }

    /// <summary>A cell that a spreadsheet would take for a formula has a mark in front: what a seller wrote never runs.</summary>
    /// <remarks>Source: OWASP, "CSV Injection", from memory: = + - @, a tab and a carriage return begin one.</remarks>
    internal static string Cell(string text)
    {
        var guarded = text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal) ? $"'{text}" : text;
        return guarded.AsSpan().ContainsAny(",\"\r\n") ? $"\"{guarded.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : guarded;
    }

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

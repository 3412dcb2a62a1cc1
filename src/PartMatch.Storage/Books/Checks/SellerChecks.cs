using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Who sells, and on what terms.</summary>
internal static class SellerChecks
{
    private static readonly string[] _amounts = ["shipping_fixed", "shipping_per_item", "free_from"];

    /// <summary>Of the goods' price, in percent.</summary>
    private static readonly string[] _shares = ["import_charge", "restocking"];

    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Sellers))
        {
            foreach (var amount in _amounts.Where(row.Has))
            {
                WorkChecks.CheckDigits(row, amount, errors);
                if (!row.Has("currency"))
                {
                    errors.Add(row, "currency", $"empty, but {amount} is an amount of money: expected an ISO 4217 code such as EUR");
                }
            }

            foreach (var share in _shares.Where(share => Cells.FindNumber(row[share]) > 100))
            {
                errors.Add(row, share, "a share of the price in percent: expected 0 to 100");
            }

            if (Cells.FindWhole(row["days_min"]) is { } least && Cells.FindWhole(row["days_max"]) is { } most && least > most)
            {
                errors.Add(row, "days_max", $"less than days_min, which is {least}", "exchange the two");
            }
        }
    }
}

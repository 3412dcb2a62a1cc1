using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>What is for sale, and the words it was read from.</summary>
internal static class OfferChecks
{
    /// <summary>Ours, no source: nothing on an engine costs as much in any currency, and sums over many pieces stay within their range.</summary>
    private const decimal DearestPrice = 1_000_000_000;

    private static readonly string[] _amounts = ["price", "core_deposit", "shipping"];

    private static readonly string[] _pieces = ["pack", "stock"];

    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Offers))
        {
            CheckWhatIsSold(row, errors);
            CheckMoney(row, errors);
            CheckTerms(row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Listings))
        {
            CheckText(row, errors);
        }
    }

    private static void CheckWhatIsSold(BookRow row, ErrorList errors)
    {
        if (!row.Has("part") && NumberKey.Of(row["number_as_written"]).Length == 0)
        {
            errors.Add(
                row, "number_as_written", "neither a part nor a number, so nobody can tell what is for sale: expected a part of the books, or the number as the seller writes it",
                "write the number even where no book has it");
        }
        else if (NumberKey.Of(row["number_as_written"]).Length > NumberKey.MaxLength)
        {
            errors.Add(row, "number_as_written", $"more than a number: expected at most {NumberKey.MaxLength} letters and digits",
                "put further words into the note");
        }

        foreach (var pieces in _pieces.Where(column => Cells.FindWhole(row[column]) > OfferBounds.MostPieces))
        {
            errors.Add(row, pieces, $"expected at most {OfferBounds.MostPieces} pieces");
        }

        if (Cells.FindWhole(row["pack"]) == 0)
        {
            errors.Add(row, "pack", "the price is for nothing: expected 1 piece or more", "leave it empty where it is not known");
        }
    }

    private static void CheckMoney(BookRow row, ErrorList errors)
    {
        foreach (var amount in _amounts.Where(row.Has))
        {
            WorkChecks.CheckDigits(row, amount, errors);
            if (Cells.FindNumber(row[amount]) > DearestPrice)
            {
                errors.Add(row, amount, "more than any part costs: expected at most 1000000000");
            }
        }

        if (Cells.FindNumber(row["price"]) == 0)
        {
            errors.Add(row, "price", "0 is no price that is asked: expected more than 0", "leave the offer out where the price is on request");
        }

        if (Cells.FindNumber(row["restocking"]) > 100)
        {
            errors.Add(row, "restocking", "a share of the price in percent: expected 0 to 100");
        }
    }

    private static void CheckTerms(BookRow row, ErrorList errors)
    {
        if (Cells.FindWhole(row["days_min"]) is { } least && Cells.FindWhole(row["days_max"]) is { } most && least > most)
        {
            errors.Add(row, "days_max", $"less than days_min, which is {least}", "exchange the two");
        }

        if (row["returnable"] == "no" && Cells.FindWhole(row["returns_days"]) > 0)
        {
            errors.Add(row, "returns_days", $"{row["returns_days"]} days to send back what cannot be sent back: expected one of the two",
                "leave one of the two empty");
        }
    }

    private static void CheckText(BookRow row, ErrorList errors)
    {
        if (row["text"].Length > ListingText.MostCharacters)
        {
            errors.Add(row, "text", $"{row["text"].Length} characters: expected at most {ListingText.MostCharacters}",
                "keep the part that speaks of the offer");
        }
        else if (row.Has("text") && Cells.Digest.Accepts(row["listing"]) && ListingText.DigestOf(row["text"]) != row["listing"])
        {
            errors.Add(
                row, "listing", "not the SHA-256 of the text: a text that was changed is another one; expected the digest of the text as it stands",
                () => ListingText.DigestOf(row["text"]));
        }
    }
}

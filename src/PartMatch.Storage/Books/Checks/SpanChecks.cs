using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>From is not after to.</summary>
internal static class SpanChecks
{
    public static void Check(BookRow row, ErrorList errors)
    {
        if (BuildDate.Find(row["built_from"]) is { } from && BuildDate.Find(row["built_to"]) is { } to && from.First > to.Last)
        {
            errors.Add(row, "built_to", $"before built_from, which is {from.Text}", "exchange the two");
        }

        if (Cells.FindWhole(row["serial_from"]) is { } first && Cells.FindWhole(row["serial_to"]) is { } last && first > last)
        {
            errors.Add(row, "serial_to", $"less than serial_from, which is {row["serial_from"]}", "exchange the two");
        }
    }

    /// <summary>The same for a band of two numbers, either of which may be empty, but not both.</summary>
    public static void CheckBand(BookRow row, string low, string high, ErrorList errors)
    {
        if (!row.Has(low) && !row.Has(high))
        {
            errors.Add(row, low, $"{low} and {high} are both empty: a band without ends demands nothing");
        }

        if (Cells.FindNumber(row[low]) is { } least && Cells.FindNumber(row[high]) is { } most && least > most)
        {
            errors.Add(row, high, $"less than {low}, which is {row[low]}", "exchange the two");
        }
    }
}

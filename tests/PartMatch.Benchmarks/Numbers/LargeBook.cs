using System.Globalization;
using System.Text;
using PartMatch.Storage.Books;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>An invented maker's whole list as a parts book: a key set as part numbers, each with one value.</summary>
internal static class LargeBook
{
    public static BookFiles Of(KeySet set, string code, int most)
    {
        var (parts, values) = (new StringBuilder("part,kind,name,note,evidence\n"), new StringBuilder("part,feature,value,minus,plus,unit,uncertainty,evidence\n"));
        foreach (var (index, key) in set.Keys.Take(most).Index())
        {
            parts.Append(CultureInfo.InvariantCulture, $"velm:{key},bush,Bush {index},,\n");
            values.Append(CultureInfo.InvariantCulture, $"velm:{key},bore,{10 + (index % 900) / 10m},,,mm,,\n");
        }

        (string Name, string Text)[] files =
        [
            ("book.csv", $"format,book,kind,title,maker,uses,licence,note\n1,{code},common,A whole maker's list,,,CC0-1.0,\n"),
            ("kinds.csv", "kind,name,running,reviewed,cautions\nbush,Bush,cannot-alter,yes,\n"),
            ("makers.csv", "maker,name\nvelm,Velm Works\n"),
            ("features.csv", "kind,feature,name,type,unit,choices\nbush,bore,bore,quantity,mm,\n"),
            ("parts.csv", parts.ToString()),
            ("values.csv", values.ToString()),
        ];
        return new BookFiles([.. files.Select(file => new BookFile(file.Name, Encoding.UTF8.GetBytes(file.Text)))]);
    }
}

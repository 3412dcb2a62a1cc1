using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Words that say that nobody has tried whether it works, in English, German, French, Swedish and Spanish. Trade usage, from memory.</summary>
internal static class UntestedWords
{
    private static readonly Regex _untested = new(
        @"\b(?:untested|un-tested|(?:not|never) (?:been )?(?:tested|tried)|(?:isn|hasn|wasn)['’]t (?:been )?(?:tested|tried)|"
        + @"(?:can|could)(?:not|['’]t| not) (?:be )?test(?:ed)?|"
        + @"ungetestet\w*|ungeprüft\w*|nicht (?:getestet|geprüft|ausprobiert)|(?:non|pas|jamais) (?:testée?s?|essayée?s?|vérifiée?s?)|"
        + @"otesta[dt]\w*|oprovad\w*|(?:ej|inte|aldrig) (?:testa[dt]\w*|provad\w*|provkörd\w*)|sin (?:probar|testar|comprobar)|"
        + @"no (?:probad|testead|comprobad)[oa]s?)\b",
        RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

    /// <summary>The words; null where none say so.</summary>
    public static string? Find(string text) => _untested.Match(text) is { Success: true } match ? match.Value : null;

    /// <summary>
    /// Of each product, by its place among them. The words of the page count for all of them, the rows of its tables each for their own thing.
    /// </summary>
    public static IReadOnlyList<string?> ByProduct(ReadListing listing)
    {
        var page = Find(Words(listing.Passages.Where(passage => passage is { Product: null, Place: not (PassagePlace.TableCell or PassagePlace.Quoted) })));
        var own = listing.Passages.Where(passage => passage.Product is not null).ToLookup(passage => passage.Product);
        return
        [
            .. listing.Products.Select((product, index) => Find(Words(own[index].Append(new Passage(PassagePlace.Text, "name", product.Name ?? ""))))
                ?? (product.From == StatementForm.Text && listing.Products.Count > 1 ? null : page)),
        ];
    }

    private static string Words(IEnumerable<Passage> passages) => string.Join('\n', passages.Select(passage => passage.Text));
}

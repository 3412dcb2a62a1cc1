using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Listings;

/// <summary>Puts together what the readers found, so that a thing said twice is one.</summary>
internal static class ListingAssembly
{
    // A page of a thousand broken blocks says no more by its thousandth warning.
    private const int MostWarnings = 20;

    /// <param name="stated">By syntax, the most careful first: JSON-LD, microdata, RDFa.</param>
    /// <param name="rows">Of tables.</param>
    /// <param name="terms">Of definition lists and lines.</param>
    /// <param name="declared">Counts where the one thing on offer states no price of its own.</param>
    public static ReadListing Make(
        string? title, string? language, IEnumerable<IReadOnlyList<ListedProduct>> stated, IReadOnlyList<ListedProduct> rows, IReadOnlyList<Term> terms,
            IReadOnlyList<VisibleLine> lines,
        string? currency, ReadPrice? declared, List<ListingWarning> warnings)
    {
        var products = Once(stated.Append(rows));
        var money = currency ?? Currency(products);

        var texts = lines.Where(line => line.Place != PassagePlace.Picture && (rows.Count == 0 || line.Table is null)).Select(line => line.Asked)
            .Where(text => text.Length > 0).ToList();
        var leading = lines.Where(line => line.Place == PassagePlace.Heading).Select(line => line.Text).Prepend(title).OfType<string>()
            .DefaultIfEmpty(texts.FirstOrDefault() ?? "").Where(text => text.Length > 0)
            .Distinct().Take(3).ToList();
        // Costly, and for nothing where a page states many things.
        var said = new Lazy<SaidInText>(() => WithDeclared(SaidInText.Read(terms, texts, leading, money), declared));
        if (products.Count == 0)
        {
            products.Add(new(said.Value.Whole(texts), []));
        }
        else if (products.SelectMany(product => product.Product.Offers).Take(2).Count() == 1)
        {
            var only = products.FindIndex(product => product.Product.Offers.Count == 1);
            var offer = products[only].Product.Offers[0];
            var filled = said.Value.Fill(offer with { Price = offer.Price ?? declared });
            products[only] = products[only] with { Product = products[only].Product with { Offers = [filled] } };
        }
        else if (products.Count == 1 && products[0].Product is { Offers.Count: 0, Said: null } bare && said.Value.Whole(texts).Offers is [var whole])
        {
            products[0] = products[0] with
            {
                Product = bare with
                {
                    Offers = [whole with { Condition = bare.Condition == ItemCondition.NotStated
                ? whole.Condition : bare.Condition }]
                }
            };
        }

        int? single = products.Count == 1 ? 0 : null;
        List<Passage> passages = [];
        if (title is not null)
        {
            passages.Add(new(PassagePlace.Title, "title", title));
        }

        passages.AddRange(products.SelectMany((product, index) => product.Passages.Select(passage => passage with { Product = index })));
        passages.AddRange(terms.Select(term => new Passage(PassagePlace.Definition, term.Written, term.Value, single, LabelWords.Property(term.Label))));
        passages.AddRange(lines.Select(line => new Passage(line.Place, line.Where, line.Text)));
        var visible = string.Join('\n', lines.Where(line => line.Place != PassagePlace.Picture || line.Where.StartsWith("caption", StringComparison.Ordinal))
            .Select(line => line.Text));
        return new ReadListing(title, language, CrownCurrency.Settle([.. products.Select(product => product.Product)], language), passages, visible, [.. warnings.Distinct().Take(MostWarnings)])
        {
            DeclaredPrice = declared,
        };
    }

    /// <summary>The currency that all stated offers share; null where they share none.</summary>
    public static string? Currency(IEnumerable<ListedProduct> products) =>
        products.SelectMany(product => product.Product.Offers).Select(offer => offer.Price).OfType<ReadPrice.Stated>().Select(price => price.Money.Currency)
            .Distinct().Take(2).ToList() is [var only] ? only : null;

    // The first statement of a thing stands; a later one in another form only brings what was left open.
    private static List<ListedProduct> Once(IEnumerable<IReadOnlyList<ListedProduct>> forms)
    {
        List<ListedProduct> products = [];
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var form in forms)
        {
            var before = products.Count;
            foreach (var next in form)
            {
                if (FindSame(products, known, next.Product) is var same && same < before)
                {
                    products[same] = Join(products[same], next);
                }
                else
                {
                    products.Add(next);
                }
            }

            for (var index = before; index < products.Count; index++)
            {
                foreach (var identity in Identities(products[index].Product))
                {
                    known.TryAdd(identity, index);
                }
            }
        }

        return products;
    }

    private static ListedProduct Join(ListedProduct first, ListedProduct next) => new(
        first.Product with
        {
            Offers = first.Product.Offers.Count > 0 ? first.Product.Offers : next.Product.Offers,
            Numbers = [.. first.Product.Numbers.Union(next.Product.Numbers)],
            Brand = first.Product.Brand ?? next.Product.Brand,
            Condition = first.Product.Condition == ItemCondition.NotStated ? next.Product.Condition : first.Product.Condition,
        },
        [.. first.Passages, .. next.Passages]);

    /// <summary>Index of the first product that shares a number, or has the same name where one of the two has no number at all.</summary>
    private static int FindSame(List<ListedProduct> products, Dictionary<string, int> known, ReadProduct next) =>
        Identities(next).Where(known.ContainsKey).Select(identity => (Index: known[identity], ByName: identity.StartsWith(' ')))
            .Where(found => !found.ByName || next.Numbers.Count == 0 || products[found.Index].Product.Numbers.Count == 0)
            .Select(found => found.Index).Append(int.MaxValue).Min();

    // Keys of its numbers; its name behind a space, which no key begins with.
    private static IEnumerable<string> Identities(ReadProduct product) =>
        product.Numbers.Select(number => NumberKey.Of(number.Value)).Where(key => key.Length > 0)
            .Concat(product.Name is null ? [] : [" " + product.Name.ToUpperInvariant()]);

    /// <summary>Words that say another thing, or that no price can be had, are not overruled by what the page declares.</summary>
    private static SaidInText WithDeclared(SaidInText said, ReadPrice? declared) => said.Price is null
        || (said.Price is ReadPrice.Ambiguous open && declared is ReadPrice.Stated { Money: var settled } && open.Readings.Contains(settled))
            ? said with { Price = declared ?? said.Price }
            : said;
}

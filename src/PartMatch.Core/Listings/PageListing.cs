namespace PartMatch.Core.Listings;

/// <summary>A page, asked by every reader in turn.</summary>
internal static class PageListing
{
    public static ListingReading Read(PageNode.Element page, ListingBounds bounds, List<ListingWarning> warnings, bool isLetter, string? savedFrom)
    {
        var elements = PageWalk.Elements(page).ToList();
        var title = elements.Where(element => element.Name == "title" && element.Parent?.Name == "head")
            .Select(element => PageWalk.Tidy(PageWalk.RawText(element))).FirstOrDefault(text => text.Length > 0);
        var language = page.Find("lang") is { Length: > 0 } lang ? lang.Trim() : null;
        var jsonLd = new JsonLd(bounds, warnings);
        foreach (var script in elements.Where(IsJsonLd))
        {
            jsonLd.Read(PageWalk.RawText(script));
        }

        var currency = DeclaredPrice.Currency(elements);
        var stated = new[] { jsonLd.Roots, MicrodataReader.Read(page, bounds, warnings), RdfaReader.Read(page, warnings) }
            .Select(roots => new StatedProducts(currency, warnings).Read(roots)).ToList();
        currency ??= ListingAssembly.Currency(stated.SelectMany(products => products));

        var lines = VisibleText.Read(page, isLetter);
        currency ??= PriceCurrency.FindOfAll(lines.Where(line => line.Table is null).Select(line => line.Asked));
        var grids = elements.Where(element => element.Name == "table" && !IsInHidden(element)).Select(TableGrid.Of).ToList();
        var rows = grids.SelectMany(grid => TableReader.Products(grid, currency)).Take(StatedProducts.Most + 1).ToList();
        if (rows.Count > StatedProducts.Most)
        {
            rows.RemoveAt(StatedProducts.Most);
            warnings.Add(new("too-many-rows", $"more than {StatedProducts.Most} rows of tables offer something; the rest is left out"));
        }

        var terms = DefinitionReader.Lists(page)
            .Concat(grids.Where(grid => TableReader.FindHeads(grid) < 0).SelectMany(DefinitionReader.Pairs))
            .Concat(lines.Where(line => line.Table is null && line.Place is PassagePlace.Text or PassagePlace.Heading)
            .SelectMany(line => DefinitionReader.Line(line.Asked)))
            .Distinct().ToList();
        return new ListingReading.Read(
            ListingAssembly.Make(title, language, stated, rows, terms, lines, currency, DeclaredPrice.Find(elements, currency), warnings) with
            {
                Address = PageAddress.Find(elements, savedFrom),
            });
    }

    private static bool IsJsonLd(PageNode.Element element) =>
        element.Name == "script" && element.Find("type")?.Split(';')[0].Trim().Equals("application/ld+json", StringComparison.OrdinalIgnoreCase) == true;

    public static bool IsInHidden(PageNode.Element element)
    {
        for (var inside = element; inside is not null; inside = inside.Parent)
        {
            if (VisibleText.IsHidden(inside))
            {
                return true;
            }
        }

        return false;
    }
}

namespace PartMatch.Core.Listings;

/// <summary>A product of a listing with the passages that state it; their product index is set when the listing is put together.</summary>
internal sealed record ListedProduct(ReadProduct Product, IReadOnlyList<Passage> Passages);

/// <summary>Products and offers from things stated in schema.org's words.</summary>
internal sealed class StatedProducts(string? currency, List<ListingWarning> warnings)
{
    /// <summary>Products or offers of one page; references can multiply them without end. Ours, no source.</summary>
    public const int Most = 2_000;

    private static readonly string[] _products = ["Product", "IndividualProduct", "ProductModel", "SomeProducts", "ProductGroup", "Vehicle", "Car"];

    // What is only mentioned beside the thing sold.
    private static readonly HashSet<string> _others =
    [
        "isRelatedTo", "isSimilarTo", "isAccessoryOrSparePartFor", "isConsumableFor", "predecessorOf", "successorOf", "isVariantOf", "model", "material",
            "itemReviewed", "review",
        "brand", "manufacturer", "seller", "offeredBy",
    ];

    private static readonly string[] _described = ["model", "description"];

    private readonly List<ListedProduct> _found = [];
    private readonly HashSet<StatedThing> _offered = [];
    private readonly HashSet<StatedThing> _read = [];
    private int _offers;
    private readonly HashSet<StatedThing> _mentioned = [];

    /// <summary>In the order of the document.</summary>
    public IReadOnlyList<ListedProduct> Read(IReadOnlyList<StatedThing> roots)
    {
        var things = Reachable(roots);
        foreach (var (property, values) in things.SelectMany(thing => thing.Properties).Where(pair => _others.Contains(pair.Key)))
        {
            _mentioned.UnionWith(values.Select(value => value.Thing).OfType<StatedThing>());
        }

        // Variants stand for their group where it has any; a product is read by the thing that offers it before it is read by itself.
        foreach (var thing in things.Where(thing => !_mentioned.Contains(thing)))
        {
            Take(thing, null);
        }

        return _found;
    }

    private void Take(StatedThing thing, StatedThing? group)
    {
        if (_found.Count >= Most || _offers >= Most)
        {
            Once("too-many-products", $"more than {Most} products or offers on the page; the rest is left out");
        }
        else if (thing.Is(_products) && _read.Add(thing))
        {
            var variants = thing.Things("hasVariant").ToList();
            variants.ForEach(variant => Take(variant, thing));
            if (variants.Count == 0 || thing.Things("offers").Any())
            {
                AddProduct(thing, group);
            }
        }
        else if (thing.Is("Offer") && !_offered.Contains(thing) && _read.Add(thing))
        {
            var items = thing.Things("itemOffered").ToList();
            foreach (var item in items.Where(item => _read.Add(item)))
            {
                AddProduct(item, group, thing);
            }

            if (items.Count == 0)
            {
                AddProduct(thing, null, thing);
            }
        }
    }

    private void AddProduct(StatedThing thing, StatedThing? group, StatedThing? soleOffer = null)
    {
        var offers = soleOffer is null ? StatedOffers.Of(thing, Most - _offers) : [soleOffer];
        _offers += offers.Count;
        _offered.UnionWith(offers);
        // An offer of several that names a number of its own, or another thing, is of a product of its own.
        var apart = soleOffer is null && offers.Count > 1 ? offers.Where(offer => StandsApart(offer, thing)).ToList() : [];
        var kept = offers.Except(apart).ToList();
        if (kept.Count > 0 || apart.Count == 0)
        {
            Add(thing, group, kept, soleOffer is null ? thing.Things("offers").FirstOrDefault(offer => offer.Is("AggregateOffer")) : null);
        }

        foreach (var offer in apart)
        {
            var item = offer.Things("itemOffered").FirstOrDefault(item => item != thing) ?? offer;
            _read.Add(item);
            Add(item, thing, [offer], null);
        }
    }

    private void Add(StatedThing thing, StatedThing? group, IReadOnlyList<StatedThing> offers, StatedThing? range)
    {
        var source = thing.Form switch { StatementForm.JsonLd => "JSON-LD", StatementForm.Microdata => "microdata", _ => "RDFa" };
        var name = thing.FindText("name") ?? group?.FindText("name");
        var own = StatedNumbers.Own(thing).Concat(offers.Count == 1 && offers[0] != thing ? StatedNumbers.Own(offers[0]) : []).DistinctBy(pair => pair.Number)
            .ToList();
        var condition = StatedTerms.Condition(thing);
        var words = Beginning($"{name} {thing.FindText("description")}");
        List<Passage> passages = [];
        if (name is not null)
        {
            passages.Add(new(PassagePlace.Heading, $"{source} name", PageWalk.Tidy(name)));
        }

        passages.AddRange(own.Select(pair => new Passage(PassagePlace.Property, $"{source} {pair.Property}", pair.Number.Value, null, pair.Number.Property)));
        passages.AddRange(StatedNumbers.Others(thing).Select(other =>
            new Passage(PassagePlace.Property, $"{source} {other.Property}", PageWalk.Tidy(other.Text), null, other.As)));
        passages.AddRange(_described.SelectMany(property => thing.Texts(property)
            .Select(text => new Passage(PassagePlace.Property, $"{source} {property}", PageWalk.Tidy(text)))));
        var read = offers.Select(offer => StatedOffers.Read(offer, thing, group, condition, words, currency, warnings)).ToList();
        _found.Add(new(
            new(thing.Form, name is null ? null : PageWalk.Tidy(name), Brand(thing) ?? (group is null ? null : Brand(group)),
                [.. own.Select(pair => pair.Number)], condition, read,
                range is null ? null : Said(range)),
            passages));
    }

    private OfferRange Said(StatedThing range)
    {
        var money = StatedPrices.Currency(range) ?? currency;
        return new(StatedPrices.One(range, "lowPrice", money), StatedPrices.One(range, "highPrice", money), StatedTerms.Whole(range.FindText("offerCount")));
    }

    private static string? Brand(StatedThing thing) =>
        StatedOffers.Named(thing, "brand") ?? StatedOffers.Named(thing, "manufacturer");

    // Enough of a description to say how much is sold. Ours, no source.
    private static string Beginning(string text) => text.Length > 4_000 ? text[..4_000] : text;

    private static bool StandsApart(StatedThing offer, StatedThing product)
    {
        var own = StatedNumbers.Own(product).Select(pair => pair.Number).ToList();
        return offer.Things("itemOffered").Any(item => item != product && !item.IsEmpty)
            || StatedNumbers.Own(offer).Any(pair => pair.Number.Property is NumberProperty.Mpn or NumberProperty.Gtin && !own.Contains(pair.Number));
    }

    /// <summary>Everything that stands on the page by itself or inside something that does, each once, outermost first.</summary>
    private static List<StatedThing> Reachable(IReadOnlyList<StatedThing> roots)
    {
        var things = new List<StatedThing>(roots);
        var seen = new HashSet<StatedThing>(roots);
        for (var index = 0; index < things.Count; index++)
        {
            foreach (var thing in things[index].Properties.Where(pair => !_others.Contains(pair.Key)).SelectMany(pair => pair.Value)
                .Select(value => value.Thing).OfType<StatedThing>())
            {
                if (seen.Add(thing))
                {
                    things.Add(thing);
                }
            }
        }

        return things;
    }

    private void Once(string code, string text)
    {
        if (!warnings.Exists(warning => warning.Code == code))
        {
            warnings.Add(new(code, text));
        }
    }
}

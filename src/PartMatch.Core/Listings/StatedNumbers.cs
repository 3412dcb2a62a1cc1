namespace PartMatch.Core.Listings;

/// <summary>The numbers that a thing states of itself, and what it says it is for or stands in for.</summary>
internal static class StatedNumbers
{
    // Of one property. Ours, no source.
    private const int Most = 200;

    private static readonly (string Property, NumberProperty As)[] _own =
    [
        ("mpn", NumberProperty.Mpn), ("sku", NumberProperty.Sku), ("gtin", NumberProperty.Gtin), ("gtin8", NumberProperty.Gtin),
            ("gtin12", NumberProperty.Gtin),
        ("gtin13", NumberProperty.Gtin), ("gtin14", NumberProperty.Gtin), ("productID", NumberProperty.ProductId), ("identifier", NumberProperty.ProductId),
    ];

    /// <summary>Of the thing sold; each property and value once.</summary>
    public static IEnumerable<(string Property, StatedNumber Number)> Own(StatedThing thing)
    {
        foreach (var (property, kind) in _own)
        {
            foreach (var text in thing.Texts(property).Where(text => text.Length > 0).Take(Most))
            {
                yield return (property, Number(kind, text));
            }
        }

        foreach (var property in (string[])["identifier", "additionalProperty"])
        {
            foreach (var pair in thing.Things(property).Take(Most))
            {
                var label = LabelWords.Find(pair.FindText("propertyID") ?? "") ?? LabelWords.Find(pair.FindText("name") ?? "");
                var kind = LabelWords.Property(label) ?? (property == "identifier" ? NumberProperty.ProductId : null);
                if (kind is { } known && pair.FindText("value") is { } value)
                {
                    yield return ($"{property} {pair.FindText("propertyID") ?? pair.FindText("name") ?? "value"}", Number(known, value));
                }
            }
        }
    }

    /// <summary>Names and numbers of other things that it is for, or stands in for. What is merely similar or related is not of this listing.</summary>
    public static IEnumerable<(string Property, NumberProperty As, string Text)> Others(StatedThing thing)
    {
        foreach (var (property, kind) in ((string, NumberProperty)[])
            [
                ("isAccessoryOrSparePartFor", NumberProperty.Fits), ("isConsumableFor", NumberProperty.Fits),
                ("predecessorOf", NumberProperty.Replaces), ("successorOf", NumberProperty.Replaces),
            ])
        {
            foreach (var text in Named(thing, property).Take(Most))
            {
                yield return (property, kind, text);
            }
        }
    }

    /// <summary>"mpn:RB-6PK" is an mpn, whatever property it stands in.</summary>
    public static StatedNumber Number(NumberProperty property, string written)
    {
        var colon = written.IndexOf(':', StringComparison.Ordinal);
        var (kind, value) = (colon < 0 ? "" : written[..colon].Trim().ToLowerInvariant()) switch
        {
            "mpn" => (NumberProperty.Mpn, written[(colon + 1)..].Trim()),
            "sku" => (NumberProperty.Sku, written[(colon + 1)..].Trim()),
            "gtin" or "gtin8" or "gtin12" or "gtin13" or "gtin14" or "ean" or "upc" => (NumberProperty.Gtin, written[(colon + 1)..].Trim()),
            _ => (property, written),
        };
        return new(kind, value, kind == NumberProperty.Gtin ? Gtin.Check(value) : null);
    }

    private static List<string> Named(StatedThing thing, string property) =>
        [.. thing.Texts(property).Take(Most), .. thing.Things(property).Take(Most)
            .SelectMany(other => Own(other).Select(own => own.Number.Value).Concat(other.Texts("name")))];
}

using System.Collections.Frozen;

namespace PartMatch.Core.Listings;

/// <summary>What the head of a column, a term or the word before a colon says of the value beside it.</summary>
internal enum Label
{
    Number,
    Mpn,
    Sku,
    Gtin,
    Fits,
    Replaces,
    Description,
    Brand,
    Price,
    OldPrice,

    /// <summary>How many pieces a price is for.</summary>
    Pieces,

    /// <summary>Of how many it does not say: pieces of the set, or pieces there are.</summary>
    Quantity,
    Stock,
    Condition,
    Availability,
    Shipping,
    Days,
    Deposit,
    Returns,
    Seller,
}

/// <summary>The words for it in English, German, French, Swedish and Spanish. Trade usage, from memory.</summary>
internal static class LabelWords
{
    private static readonly FrozenDictionary<string, Label> _labels = new Dictionary<Label, string>
    {
        [Label.Number] = "number|no|part number|part no|part num|part #|part|p/n|pn|oe number|oe no|oem number|oem|oe|oem no|reference|ref|ref no|"
            + "reference number|item number|nummer|nr|"
            + "teilenummer|teile-nr|teilenr|artikelnummer|artikel-nr|art-nr|art nr|oe-nummer|oe-nr|referenz|numéro|n°|référence|réf|numéro de pièce|"
            + "n° de pièce|référence oe|"
            + "artikelnr|artnr|art.nr|delnummer|reservdelsnummer|detaljnummer|referens|número|nº|referencia|número de pieza|nº de pieza|código|code|número oem",
        [Label.Mpn] = "mpn|maker's number|maker’s number|maker's no|manufacturer part number|manufacturer number|herstellernummer|hersteller-nr|référence fabricant|référence constructeur|"
            + "tillverkarens nummer|"
            + "tillverkarnummer|referencia del fabricante",
        [Label.Sku] = "sku|stock number|stock no|our number|our ref|shop number|lagernummer|bestellnummer|bestell-nr|unsere nr|référence interne|"
            + "vårt nummer|nuestra referencia",
        [Label.Gtin] = "gtin|ean|upc|barcode|gtin-13|ean-13|code-barres|streckkod|código de barras",
        [Label.Fits] = "fits|fits to|suitable for|for|compatible with|fitment|application|passend für|passt für|passend zu|für|verwendung|"
            + "compatible avec|convient à|pour|montage sur|"
            + "passar|passar till|till|compatible con|para|válido para|apto para",
        [Label.Replaces] = "replaces|replacement for|supersedes|instead of|old number|ersetzt|ersatz für|alte nummer|remplace|ancienne référence|"
            + "ersätter|gammalt nummer|sustituye a|"
            + "reemplaza|reemplaza a",
        [Label.Description] = "description|item|name|article|product|title|designation|bezeichnung|beschreibung|artikel|benennung|produkt|désignation|"
            + "article|produit|libellé|benämning|"
            + "beskrivning|namn|descripción|denominación|artículo|producto|nombre|part name",
        [Label.Brand] = "brand|make|maker|manufacturer|marke|hersteller|marque|fabricant|märke|tillverkare|marca|fabricante",
        [Label.Price] = "price|our price|unit price|price each|each|cost|preis|stückpreis|einzelpreis|vk|prix|prix unitaire|tarif|pris|á-pris|a-pris|"
            + "styckpris|precio|precio unitario|pvp|asking price|vb",
        [Label.OldPrice] = "rrp|list price|old price|was|uvp|listenpreis|alter preis|statt|prix conseillé|ancien prix|ordinarie pris|ord pris|"
            + "ord. pris|precio anterior|antes|msrp",
        [Label.Quantity] = "quantity|qty|pieces|pcs|menge|anzahl|stück|stk|quantité|qté|antal|st|cantidad|cant|cdad|uds|unidades",
        [Label.Pieces] = "packet of|pack of|packung zu|set of|pack|pack size|pieces per pack|ve|vpe|verpackungseinheit|par lot de|conditionnement|förpackning|unidades por paquete",
        [Label.Stock] = "stock|in stock|on hand|lager|bestand|lagerbestand|en stock|lagersaldo|existencias|disponibles",
        [Label.Condition] = "condition|state|zustand|état|etat|skick|tillstånd|estado|condición",
        [Label.Availability] = "availability|verfügbarkeit|disponibilité|tillgänglighet|disponibilidad|lieferbarkeit",
        [Label.Shipping] = "shipping|postage|post|delivery|p&p|carriage|freight|versand|versandkosten|porto|fracht|port|frais de port|livraison|expédition|"
            + "frakt|envío|gastos de envío|portes",
        [Label.Days] = "delivery time|lead time|lieferzeit|délai|délai de livraison|leveranstid|plazo de entrega|days|with you in|arrives in|bei ihnen in|hos dig om",
        [Label.Deposit] = "core|core deposit|core charge|deposit|exchange deposit|altteilpfand|pfand|altteilsteuer|consigne|pant|stompant|"
            + "depositionsavgift|depósito|fianza",
        [Label.Returns] = "returns|return policy|rückgabe|rücknahme|retours|retour|returer|retur|devoluciones",
        [Label.Seller] = "seller|sold by|verkäufer|anbieter|vendeur|säljare|vendedor",
    }.SelectMany(pair => pair.Value.Split('|').Distinct().Select(word => (word, pair.Key))).DistinctBy(pair => pair.word)
        .ToFrozenDictionary(pair => pair.word, pair => pair.Key, StringComparer.OrdinalIgnoreCase);

    // Longer than any label.
    private const int Longest = 40;

    /// <summary>What the words mean as a label; null where they are none. A part in brackets ("Price (EUR)") does not count.</summary>
    public static Label? Find(string written)
    {
        var bracket = written.IndexOf('(', StringComparison.Ordinal);
        var text = (bracket > 0 ? written[..bracket] : written).Trim(' ', '\u00A0', ':', '.', '#', '*');
        return text.Length is 0 or > Longest ? null
            : _labels.TryGetValue(text, out var label) || _labels.TryGetValue(text.Replace(".", "", StringComparison.Ordinal), out label) ? label
            // "Price EUR", "Preis in €": the currency is no word of the label.
            : text.LastIndexOf(' ') is > 0 and var space && PriceCurrency.Of(text[space..]).Count > 0 ? Find(Without(text[..space]))
            : null;
    }

    /// <summary>The currency that a label names ("Price (EUR)", "Preis €"); null where it names none, or one of several.</summary>
    public static string? FindCurrency(string written)
    {
        foreach (var word in written.Split([' ', '(', ')', '[', ']', '/', ','], StringSplitOptions.RemoveEmptyEntries))
        {
            if (PriceCurrency.Of(word) is [var only] && (word.Length != 3 || word.Equals(word.ToUpperInvariant(), StringComparison.Ordinal)))
            {
                return only;
            }
        }

        return null;
    }

    /// <summary>The property that a label's value is a number of; null for labels of other things.</summary>
    public static NumberProperty? Property(Label? label) => label switch
    {
        Label.Number => NumberProperty.Number,
        Label.Mpn => NumberProperty.Mpn,
        Label.Sku => NumberProperty.Sku,
        Label.Gtin => NumberProperty.Gtin,
        Label.Fits => NumberProperty.Fits,
        Label.Replaces => NumberProperty.Replaces,
        _ => null,
    };

    private static string Without(string text) => text.EndsWith(" in", StringComparison.OrdinalIgnoreCase)
        || text.EndsWith(" en", StringComparison.OrdinalIgnoreCase) ? text[..^3] : text;
}

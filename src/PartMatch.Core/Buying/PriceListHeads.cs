using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace PartMatch.Core.Buying;

/// <summary>What a column of a price list holds.</summary>
public enum PriceColumn
{
    Number,
    Price,

    /// <summary>Packs in stock: how often what the price is for can be bought.</summary>
    Quantity,

    /// <summary>Pieces that the price is for.</summary>
    Pack,
    Condition,
    CoreDeposit,
    Note,
}

/// <summary>The words by which sellers head the columns of their lists.</summary>
/// <remarks>English, German, French, Swedish and Spanish; common practice, no source.</remarks>
internal static class PriceListHeads
{
    private static readonly FrozenDictionary<string, PriceColumn> _words = new (PriceColumn Column, string Words)[]
    {
        (PriceColumn.Number, "part number|part no|part nr|part|number|no|mpn|reference|ref|oem|oe number|article number|article no|item number|item no|code"),
        (PriceColumn.Number, "teilenummer|teile nr|teilenr|artikelnummer|artikel nr|artikelnr|art nr|nummer|nr|bestellnummer|bestellnr|referenz"),
        (PriceColumn.Number, "référence|réf|numéro|numéro de pièce|n de pièce|n pièce|code article|artnr|detaljnummer|reservdelsnummer"),
        (PriceColumn.Number, "referencia|número|número de pieza|n de pieza|código"),
        (PriceColumn.Price, "price|unit price|price each|each|net price|list price|amount|preis|einzelpreis|stückpreis|nettopreis|listenpreis|vk"),
        (PriceColumn.Price, "prix|prix unitaire|prix net|pris|styckpris|a pris|nettopris|precio|precio unitario|precio neto|pvp|importe"),
        (PriceColumn.Quantity, "quantity|qty|stock|in stock|available|on hand|menge|bestand|lagerbestand|lager|anzahl|verfügbar"),
        (PriceColumn.Quantity, "quantité|qté|disponible|en stock|antal|saldo|lagersaldo|cantidad|existencias|cant"),
        (PriceColumn.Pack, "pack|pack size|pieces|pieces per pack|per pack|unit|vpe|verpackungseinheit|packung|stück je packung"),
        (PriceColumn.Pack, "conditionnement|lot|pièces par lot|colis|förpackning|förp|paket|envase|paquete|unidades por paquete"),
        (PriceColumn.Condition, "condition|state|zustand|état|skick|tillstånd|estado|condición"),
        (PriceColumn.CoreDeposit, "core|core deposit|core charge|deposit|surcharge|pfand|altteilpfand|altteil|kaution"),
        (PriceColumn.CoreDeposit, "consigne|pant|bytespant|depósito|fianza|casco"),
        (PriceColumn.Note, "description|name|designation|title|details|note|remarks"),
        (PriceColumn.Note, "bezeichnung|beschreibung|benennung|bemerkung|désignation|libellé|remarque"),
        (PriceColumn.Note, "benämning|beskrivning|anmärkning|descripción|denominación|nota|observaciones"),
    }.SelectMany(line => line.Words.Split('|'), (line, word) => (Word: Plain(word), line.Column)).DistinctBy(pair => pair.Word)
        .ToFrozenDictionary(pair => pair.Word, pair => pair.Column, StringComparer.Ordinal);

    public static bool IsKnown(string head) => Find(head) is not null;

    /// <summary>What a head says that its column holds, and whether it says nothing else; null where it says nothing known.</summary>
    public static (PriceColumn Column, bool Whole)? Find(string head)
    {
        var plain = Plain(head);
        if (_words.TryGetValue(plain, out var column))
        {
            return (column, Whole: true);
        }

        // "Price in EUR", "Preis (netto) 2026": the longest known beginning or end of it, word by word.
        var words = plain.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var length = words.Length - 1; length > 0; length--)
        {
            if (_words.TryGetValue(string.Join(' ', words.Take(length)), out column) || _words.TryGetValue(string.Join(' ', words.TakeLast(length)),
                out column))
            {
                return (column, Whole: false);
            }
        }

        return null;
    }

    /// <summary>Small letters without accents, one blank between words.</summary>
    private static string Plain(string head)
    {
        var plain = new StringBuilder(head.Length);
        foreach (var rune in head.EnumerateRunes())
        {
            plain.Append(Rune.IsValid(rune.Value) ? rune.ToString() : "");
        }

        var letters = plain.ToString().Normalize(NormalizationForm.FormKD).ToLowerInvariant()
            .Where(letter => char.GetUnicodeCategory(letter) != UnicodeCategory.NonSpacingMark)
            .Select(letter => char.IsLetterOrDigit(letter) ? letter : ' ');
        return string.Join(' ', new string([.. letters]).Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }
}

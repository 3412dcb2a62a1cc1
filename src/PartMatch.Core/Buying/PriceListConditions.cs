using System.Collections.Frozen;
using PartMatch.Core.Listings;

namespace PartMatch.Core.Buying;

/// <summary>The words by which sellers' tables say in what condition a part is.</summary>
/// <remarks>English, German, French, Swedish and Spanish; common practice, no source.</remarks>
internal static class PriceListConditions
{
    private static readonly FrozenDictionary<string, ItemCondition> _words = new (ItemCondition Condition, string Words)[]
    {
        (ItemCondition.New, "new|n|neu|neuteil|neuf|neuve|ny|nytt|nya|nuevo|nueva"),
        (ItemCondition.Refurbished, "refurbished|reconditioned|remanufactured|rebuilt|overhauled|überholt|generalüberholt|aufgearbeitet"),
        (ItemCondition.Refurbished, "reconditionné|remis à neuf|renoverad|reacondicionado|reconstruido"),
        (ItemCondition.Used, "used|u|second hand|second-hand|gebraucht|gebrauchtteil|occasion|d'occasion|usagé|begagnad|begagnat|usado|usada|segunda mano"),
        (ItemCondition.Damaged, "damaged|for parts|faulty|defective|defekt|beschädigt"),
        (ItemCondition.Damaged, "endommagé|défectueux|pour pièces|skadad|trasig|dañado|averiado|para piezas"),
    }.SelectMany(line => line.Words.Split('|'), (line, word) => (word, line.Condition))
        .ToFrozenDictionary(pair => pair.word, pair => pair.Condition, StringComparer.OrdinalIgnoreCase);

    public static ItemCondition? Find(string cell) => _words.TryGetValue(cell.Trim(), out var condition) ? condition : null;
}

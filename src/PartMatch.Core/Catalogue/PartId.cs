using System.Buffers;

namespace PartMatch.Core.Catalogue;

/// <summary>A maker and a number, as books write them together: <c>maker:number as written</c>.</summary>
/// <param name="Maker">Code of the maker.</param>
/// <param name="Number">As written.</param>
public sealed record PartId(string Maker, string Number)
{
    private static readonly SearchValues<char> _lettersOfKeys = SearchValues.Create("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ");

    /// <summary>Equal for every way of writing the same number of the same maker: <c>maker:KEY</c>.</summary>
    public string Key { get; } = $"{Maker}:{NumberKey.Of(Number)}";

    /// <summary>Splits at the first colon; null when there is none, or nothing on one side of it, or no letter or digit in the number.</summary>
    public static PartId? Find(string text)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        if (colon <= 0)
        {
            return null;
        }

        var id = new PartId(text[..colon], text[(colon + 1)..]);
        return id.Key.Length > colon + 1 ? id : null;
    }

    /// <summary>The key alone; the text itself where it is one, which takes no memory.</summary>
    public static string? FindKey(string text)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        return colon > 0 && colon + 1 < text.Length && !text.AsSpan(colon + 1).ContainsAnyExcept(_lettersOfKeys) ? text : Find(text)?.Key;
    }
}

using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace PartMatch.Storage.Parts;

/// <summary>The last part of a page, so that the next page begins after it even when parts came or went meanwhile.</summary>
internal sealed record SearchCursor(int Group, string Part)
{
    public override string ToString() => Base64Url.EncodeToString(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{Group}:{Part}")));

    public static SearchCursor? Find(string text)
    {
        if (!Base64Url.IsValid(text))
        {
            return null;
        }

        var plain = Encoding.UTF8.GetString(Base64Url.DecodeFromChars(text)).Split(':', 2);
        return plain.Length == 2 && int.TryParse(plain[0], NumberStyles.None, CultureInfo.InvariantCulture, out var group)
            ? new SearchCursor(group, plain[1])
            : null;
    }
}

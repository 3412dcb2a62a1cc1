using PartMatch.Core.Catalogue;

namespace PartMatch.Web.Http;

/// <summary>A part number in a path. The web server leaves %2F as it is, because a slash would end the path part; here it is the slash of the number.</summary>
/// <param name="Text">As written.</param>
public sealed record WrittenNumber(string Text) : IParsable<WrittenNumber>
{
    public static WrittenNumber Parse(string s, IFormatProvider? provider) => new(s.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase));

    public static bool TryParse(string? s, IFormatProvider? provider, out WrittenNumber result)
    {
        result = Parse(s ?? "", provider);
        return s is not null;
    }

    /// <summary>Has it a key that a part could have?</summary>
    public static bool IsReadable(string? written) => written is not null && NumberKey.Of(written).Length is > 0 and <= NumberKey.MaxLength;
}

namespace PartMatch.Core.Listings;

/// <summary>Global Trade Item Numbers.</summary>
/// <remarks>Source: GS1 General Specifications, 7.9 (check digit); GS1 Digital Link: URI Syntax (the primary key 01 in a path).</remarks>
public static class Gtin
{
    /// <summary>Is it one? The digits themselves, with spaces or hyphens between them, or inside a Digital Link.</summary>
    public static GtinCheck Check(string written)
    {
        var digits = Digits(written);
        if (digits.Length is not (8 or 12 or 13 or 14) || !digits.All(char.IsAsciiDigit))
        {
            return GtinCheck.NotAGtin;
        }

        return HasCheckDigit(digits) ? GtinCheck.Valid : GtinCheck.WrongCheckDigit;
    }

    /// <summary>From the right the weights are 1 (the check digit itself), 3, 1, 3 …; the sum is a multiple of ten.</summary>
    /// <param name="digits">ASCII digits and nothing else.</param>
    internal static bool HasCheckDigit(ReadOnlySpan<char> digits)
    {
        var sum = 0;
        for (var index = 0; index < digits.Length; index++)
        {
            sum += (digits[index] - '0') * ((digits.Length - index) % 2 == 0 ? 3 : 1);
        }

        return sum % 10 == 0;
    }

    /// <summary>The digits of a Digital Link ("https://id.example/01/09506000134352/10/ABC"), or the text without spaces and hyphens.</summary>
    public static string Digits(string written)
    {
        var text = written.Trim();
        if (text.Contains("://", StringComparison.Ordinal))
        {
            var path = text.Split('?', '#')[0].Split('/');
            var key = path.Length > 3 ? Array.FindIndex(path, 3, part => part is "01" or "gtin") : -1;
            return key >= 0 && key + 1 < path.Length ? path[key + 1] : "";
        }

        return text.Replace(" ", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal);
    }
}

using System.Net;
using System.Text;
using System.Text.Json;

namespace PartMatch.Core.Listings;

/// <summary>The JSON of a script element, with the usual blemishes mended and told of.</summary>
internal static class JsonLdText
{
    public static JsonDocument? Parse(string script, int maxDepth, List<ListingWarning> warnings)
    {
        var text = Unwrap(script);
        if (text.Length == 0)
        {
            return null;
        }

        if (text.Length < script.Trim().Length)
        {
            warnings.Add(new("json-ld-mended", "a block of JSON-LD stands inside a comment or CDATA; read all the same"));
        }

        var options = new JsonDocumentOptions { MaxDepth = maxDepth };
        var whole = WholeEscapes(text);
        if (TryParse(whole, options, out var fault) is { } clean)
        {
            return clean;
        }

        var tolerant = options with { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };
        var mended = TryParse(Mend(whole), tolerant, out _) ?? (whole.Contains("&quot;", StringComparison.Ordinal)
            ? TryParse(Mend(WebUtility.HtmlDecode(whole)), tolerant, out _) : null);
        warnings.Add(mended is null
            ? new("json-ld-unreadable", $"a block of JSON-LD is left out: {fault}")
            : new("json-ld-mended", $"a block of JSON-LD has faults and is read all the same: {fault}"));
        return mended;
    }

    private static JsonDocument? TryParse(string text, JsonDocumentOptions options, out string fault)
    {
        fault = "";
        try
        {
            return JsonDocument.Parse(text, options);
        }
        catch (JsonException exception)
        {
            fault = exception.LineNumber is { } line ? FormattableString.Invariant($"no JSON at line {line + 1}") : "no JSON";
            return null;
        }
    }

    private static string Unwrap(string script)
    {
        var text = script.Trim().TrimStart('\uFEFF').TrimStart();
        for (var before = ""; before != text;)
        {
            before = text;
            foreach (var start in (ReadOnlySpan<string>)["<!--", "//<![CDATA[", "// <![CDATA[", "/*<![CDATA[*/", "/* <![CDATA[ */", "<![CDATA["])
            {
                text = text.StartsWith(start, StringComparison.Ordinal) ? text[start.Length..].TrimStart() : text;
            }

            foreach (var end in (ReadOnlySpan<string>)["-->", "//]]>", "// ]]>", "/*]]>*/", "/* ]]> */", "]]>", "//", ";"])
            {
                text = text.EndsWith(end, StringComparison.Ordinal) ? text[..^end.Length].TrimEnd() : text;
            }
        }

        return text;
    }

    /// <summary>Half a pair in an escape is no character, and no reader of JSON gives it out as one.</summary>
    private static string WholeEscapes(string text)
    {
        if (!text.Contains("\\u", StringComparison.Ordinal))
        {
            return text;
        }

        var whole = new StringBuilder(text);
        for (var at = 0; at < text.Length; at++)
        {
            if (text[at] != '\\')
            {
                continue;
            }

            if (Escaped(text, at) is { } high && char.IsSurrogate(high))
            {
                if (char.IsHighSurrogate(high) && Escaped(text, at + 6) is { } low && char.IsLowSurrogate(low))
                {
                    at += 11;
                    continue;
                }

                whole[at + 2] = whole[at + 3] = whole[at + 4] = 'F';
                whole[at + 5] = 'D';
            }

            at++;
        }

        return whole.ToString();
    }

    private static char? Escaped(string text, int at) =>
        at + 6 <= text.Length && text[at] == '\\' && text[at + 1] == 'u'
        && ushort.TryParse(text.AsSpan(at + 2, 4), System.Globalization.NumberStyles.AllowHexSpecifier, System.Globalization.CultureInfo.InvariantCulture,
        out var code)
            ? (char)code
            : null;

    /// <summary>Line breaks and tabs inside strings, which JSON forbids, become spaces.</summary>
    private static string Mend(string text)
    {
        var mended = new StringBuilder(text.Length);
        var inside = false;
        for (var at = 0; at < text.Length; at++)
        {
            var letter = text[at];
            if (inside && letter == '\\' && at + 1 < text.Length)
            {
                mended.Append(letter).Append(text[++at]);
                continue;
            }

            inside ^= letter == '"';
            mended.Append(letter < ' ' && inside ? ' ' : letter);
        }

        return mended.ToString();
    }
}

namespace PartMatch.Web.Http;

/// <summary>A part number as part of a path.</summary>
internal static class NumberInPath
{
    /// <summary>The web server leaves %2F as it is, because a slash would end the path part; here it is the slash of the number.</summary>
    public static string Decode(string part) => part.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase);
}

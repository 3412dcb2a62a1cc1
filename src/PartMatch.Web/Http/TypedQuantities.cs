using PartMatch.Core.Measures;

namespace PartMatch.Web.Http;

/// <summary>Quantities of a query whose rules have passed.</summary>
internal static class TypedQuantities
{
    public static Quantity? Find(string? text, Dimension dimension) => text is not null && QuantityParser.Parse(text, dimension) is QuantityRead read
        ? read.Quantity : null;

    public static QuantityRange? FindRange(string? text, Dimension dimension) => text is not null
        && QuantityRangeParser.Parse(text, dimension) is RangeRead read ? read.Range : null;

    /// <summary>A whole number with an optional sign in front.</summary>
    public static int? FindSteps(string? text) => int.TryParse(
        text, System.Globalization.NumberStyles.AllowLeadingSign, System.Globalization.CultureInfo.InvariantCulture, out var steps) ? steps : null;
}

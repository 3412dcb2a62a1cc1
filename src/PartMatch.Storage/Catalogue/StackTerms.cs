using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Catalogue;

/// <summary>
/// The terms of a stack as written: <c>+position.feature</c>, <c>-position.feature</c> or a signed number, joined by <c>|</c>, in their own order.
/// </summary>
internal static class StackTerms
{
    /// <summary>The terms, constants in the unit as written; null when one cannot be read.</summary>
    public static IReadOnlyList<StackTerm>? Find(string text)
    {
        var terms = text.Split('|').Select(FindTerm).ToList();
        return terms.Contains(null) ? null : [.. terms.OfType<StackTerm>()];
    }

    private static StackTerm? FindTerm(string text)
    {
        if (text.Length < 2 || text[0] is not ('+' or '-'))
        {
            return null;
        }

        var (sign, rest) = (text[0] == '+' ? 1 : -1, text[1..]);
        if (char.IsAsciiDigit(rest[0]) && Cells.FindNumber(rest) is { } number)
        {
            return new ConstantTerm(sign, number);
        }

        return rest.Split('.') is [var position, var feature] && Cells.Code.Accepts(position) && Cells.Code.Accepts(feature)
            ? new FeatureTerm(sign, new FeatureAt(position, feature))
            : null;
    }
}

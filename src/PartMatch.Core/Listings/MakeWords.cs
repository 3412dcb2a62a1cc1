using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Is it said to be somebody else's make under the maker's number? In English, German, French, Swedish and Spanish; trade usage, from memory.</summary>
internal static class MakeWords
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _copy = new(
        @"\b(?:pattern part|reproduction part|replica|(?:not|non)[- ](?:a )?(?:genuine|original)|nachbauteil|nachbau|kein original(?:teil)?|nicht original|"
        + @"pièce adaptable|pas d['’]origine|kopiedel|inte original|ej original|réplica|no original)\b", Linear);

    private static readonly Regex _notCopy = new(
        @"\b(?:no|not a|not|never a|kein|keine|pas une?|pas de|ingen|ninguna)\s+(?:pattern part|reproduction part|replica|nachbauteil|nachbau|pièce adaptable|kopiedel|réplica)\b",
        Linear);

    /// <summary>The words that say so; null where none do.</summary>
    public static string? SaysCopy(string text) => _copy.Match(_notCopy.Replace(text, " ")) is { Success: true } match ? match.Value : null;
}

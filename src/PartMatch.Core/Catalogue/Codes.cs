using System.Collections.Frozen;
using System.Text.Json;

namespace PartMatch.Core.Catalogue;

/// <summary>The kebab-case codes of the closed vocabularies, the same in CSV, SQL, JSON and URLs.</summary>
public static class Codes
{
    /// <summary><c>Effect.Stops</c> is <c>stops</c>, <c>Relation.AtLeast</c> is <c>at-least</c>.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum => Table<T>.ByValue[value];

    /// <summary>The value of a code, or null when the code is not of this vocabulary.</summary>
    public static T? Find<T>(string code)
        where T : struct, Enum => Table<T>.ByCode.TryGetValue(code, out var value) ? value : null;

    /// <summary>The value of a code that has been checked before.</summary>
    /// <exception cref="ArgumentException">The code is not of this vocabulary.</exception>
    public static T Get<T>(string code)
        where T : struct, Enum => Find<T>(code) ?? throw new ArgumentException($"'{code}' is not one of: {string.Join(", ", All<T>())}.", nameof(code));

    /// <summary>All codes of a vocabulary in declared order.</summary>
    public static IReadOnlyList<string> All<T>()
        where T : struct, Enum => Table<T>.Ordered;

    private static class Table<T>
        where T : struct, Enum
    {
        public static readonly string[] Ordered = [.. Enum.GetNames<T>().Select(JsonNamingPolicy.KebabCaseLower.ConvertName)];

        public static readonly FrozenDictionary<T, string> ByValue = Enum.GetValues<T>().Zip(Ordered).ToFrozenDictionary(pair => pair.First, pair => pair.Second);

        public static readonly FrozenDictionary<string, T> ByCode = ByValue.ToFrozenDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);
    }
}

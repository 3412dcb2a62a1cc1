using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Builds;

/// <summary>
/// Holds a JSON document against the type that it is to become, and tells of every member that does not belong. The library's own reading stops at the
/// first one and does not say what was expected.
/// </summary>
internal static class DocumentShape
{
    private const int MaxFaults = 20;
    private const int LongestFound = 60;

    public static IReadOnlyList<DocumentFault> FaultsOf(JsonElement root, JsonTypeInfo type) => [.. Faults(root, type, "").Take(MaxFaults)];

    private static IEnumerable<DocumentFault> Faults(JsonElement element, JsonTypeInfo type, string path) => (type.Kind, element.ValueKind) switch
    {
        (_, JsonValueKind.Null) => [Fault(path, element, "a value", "leave the member out when it is not recorded")],
        (JsonTypeInfoKind.Object, JsonValueKind.Object) => MemberFaults(element, type, path),
        (JsonTypeInfoKind.Object, _) => [Fault(path, element, "an object in braces", null)],
        (JsonTypeInfoKind.Enumerable, JsonValueKind.Array) =>
            element.EnumerateArray().Index().SelectMany(item => Faults(item.Item, ElementOf(type), $"{path}[{item.Index}]")),
        (JsonTypeInfoKind.Enumerable, _) => [Fault(path, element, "a list in brackets", null)],
        _ => ValueFaults(element, Nullable.GetUnderlyingType(type.Type) ?? type.Type, path),
    };

    private static IEnumerable<DocumentFault> MemberFaults(JsonElement element, JsonTypeInfo type, string path)
    {
        string[] known = [.. type.Properties.Select(property => property.Name)];
        foreach (var member in element.EnumerateObject())
        {
            if (type.Properties.FirstOrDefault(property => property.Name == member.Name) is not { } property)
            {
                yield return new DocumentFault(
                    Join(path, member.Name), member.Name, $"one of {string.Join(", ", known)}",
                    NearestCode.Find(member.Name, known) is { } near ? $"did you mean {near}?" : "leave it out: nothing here has that name");
                continue;
            }

            foreach (var fault in Faults(member.Value, type.Options.GetTypeInfo(property.PropertyType), Join(path, member.Name)))
            {
                yield return fault;
            }
        }

        foreach (var property in type.Properties.Where(property => IsRequired(property) && !element.TryGetProperty(property.Name, out _)))
        {
            yield return new DocumentFault(Join(path, property.Name), "nothing", Expected(property.PropertyType), "the member has to be there");
        }
    }

    private static IEnumerable<DocumentFault> ValueFaults(JsonElement element, Type type, string path)
    {
        var fits = type == typeof(string) ? element.ValueKind == JsonValueKind.String
            : type == typeof(bool) ? element.ValueKind is JsonValueKind.True or JsonValueKind.False
            : type == typeof(int) ? element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out _)
            : type == typeof(long) ? element.ValueKind == JsonValueKind.Number && element.TryGetInt64(out _)
            : type == typeof(decimal) ? element.ValueKind == JsonValueKind.Number && element.TryGetDecimal(out _)
            : type.IsEnum && element.ValueKind == JsonValueKind.String && CodesOf(type).Contains(element.GetString());
        if (!fits)
        {
            var mend = type == typeof(string) && element.ValueKind == JsonValueKind.Number ? $"write it as text, \"{element.GetRawText()}\""
                : type.IsEnum && element.ValueKind == JsonValueKind.String && NearestCode.Find(element.GetString() ?? "", CodesOf(type)) is { } near
                    ? $"did you mean {near}?"
                : null;
            yield return IsWord(element, type)
                ? new DocumentFault(path, element.GetString() ?? "", type == typeof(decimal) ? "a number" : "a whole number", "write it in figures alone")
                : Fault(path, element, Expected(type), mend);
        }
        else if (type == typeof(string) && !Cells.Text.Accepts(element.GetString() ?? ""))
        {
            yield return Fault(path, element, Cells.Text.Expected, "type it again: such marks come along with what is copied");
        }
    }

    /// <summary>A text in the place of a number that would be none without its quotes either.</summary>
    private static bool IsWord(JsonElement element, Type type) => (type == typeof(int) || type == typeof(long) || type == typeof(decimal))
        && element.ValueKind == JsonValueKind.String && element.GetString() is { Length: > 0 and <= LongestFound } text
        && !(decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && (type == typeof(decimal) || decimal.IsInteger(number)));

    private static string Expected(Type type) => (Nullable.GetUnderlyingType(type) ?? type) switch
    {
        var text when text == typeof(string) => "a text in quotes",
        var truth when truth == typeof(bool) => "true or false",
        var whole when whole == typeof(int) || whole == typeof(long) => "a whole number, not in quotes",
        var number when number == typeof(decimal) => "a number, not in quotes",
        { IsEnum: true } codes => $"one of {string.Join(", ", CodesOf(codes))}",
        { IsGenericType: true } => "a list in brackets",
        _ => "an object in braces",
    };

    private static string[] CodesOf(Type type) => [.. Enum.GetNames(type).Select(JsonNamingPolicy.KebabCaseLower.ConvertName)];

    // What a record takes in its constructor and cannot be null has to be there; everything else has a meaning when it is left out.
    private static bool IsRequired(JsonPropertyInfo property) => property.AssociatedParameter is { IsNullable: false, HasDefaultValue: false };

    private static JsonTypeInfo ElementOf(JsonTypeInfo list) => list.Options.GetTypeInfo(list.ElementType ?? typeof(object));

    private static DocumentFault Fault(string path, JsonElement element, string expected, string? mend)
    {
        var found = element.ValueKind is JsonValueKind.Object ? "an object" : element.ValueKind is JsonValueKind.Array ? "a list" : element.GetRawText();
        return new DocumentFault(path.Length == 0 ? "build" : path, found.Length > LongestFound ? found[..LongestFound] + "…" : found, expected, mend);
    }

    private static string Join(string path, string member) => path.Length == 0 ? member : $"{path}.{member}";
}

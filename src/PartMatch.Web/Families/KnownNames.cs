using PartMatch.Core.Catalogue;
using PartMatch.Storage.Families;
using PartMatch.Web.Http;

namespace PartMatch.Web.Families;

/// <summary>Says that a family, variant or position is not in the base, and which ones are.</summary>
internal static class KnownNames
{
    public static Absent NoFamily(string found, FamilyStore families) => new(Unknown("family", found, [.. families.List().Select(family => family.Family)]));

    public static Absent NoVariant(string found, FamilyFacts facts, string field = "variant") =>
        new(Unknown(field, found, [.. facts.Variants.Select(variant => variant.Code)]));

    public static Absent NoPosition(string found, FamilyFacts facts, string field = "position") =>
        new(Unknown(field, found, [.. facts.Positions.Select(position => position.Code)]));

    /// <summary>A group is a filter, not a thing of the base: an unknown one is a wrong value.</summary>
    public static Refused NoGroup(string found, FamilyFacts facts) =>
        new(Problem.Of("bad-question", Unknown("group", found, [.. facts.Positions.Select(position => position.Group).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)])));

    /// <summary>Likewise a filter.</summary>
    public static Refused NoKind(string found, FamilyFacts facts) =>
        new(Problem.Of("bad-question", Unknown("kind", found, [.. facts.Positions.Select(position => position.Kind).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)])));

    /// <summary>An error that names what is known, and the one that was probably meant.</summary>
    public static FieldError Unknown(string field, string found, string[] known) => new(
        field, found.Length == 0 ? "nothing" : found, known.Length == 0 ? "the base holds none" : $"one of {string.Join(", ", known)}",
        Nearest.Find(found, known) is { } near ? $"did you mean {near}?" : null);
}

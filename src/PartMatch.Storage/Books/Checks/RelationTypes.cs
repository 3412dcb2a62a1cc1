using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Which relations make sense for which type of feature.</summary>
internal static class RelationTypes
{
    /// <summary>For rules, needs and companions; none for a curve.</summary>
    public static IReadOnlyList<Relation> Of(FeatureType type) => type switch
    {
        FeatureType.Quantity or FeatureType.Count => [Relation.Same, Relation.AtLeast, Relation.AtMost],
        FeatureType.Choice => [Relation.Same, Relation.OneOf],
        FeatureType.Choices => [Relation.Covers, Relation.Same],
        _ => [],
    };

    /// <summary>What is wrong with a relation for that feature, or null.</summary>
    public static string? FindFault(FeatureInScope feature, string relation)
    {
        if (Codes.Find<Relation>(relation) is not { } known || Of(feature.Type).Contains(known))
        {
            return null;
        }

        var type = Codes.Of(feature.Type);
        return feature.Type == FeatureType.Curve
            ? $"'{feature.Code}' is a curve: curves are not compared"
            : $"'{feature.Code}' is a {type}, expected {string.Join(" or ", Of(feature.Type).Select(Codes.Of))}";
    }
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>What the checks need to know of a feature.</summary>
/// <param name="Unit">Of a quantity or a curve.</param>
internal sealed record FeatureInScope(string Kind, string Code, FeatureType Type, Unit? Unit, IReadOnlyList<string> Choices)
{
    /// <summary>From its row, or null when the row is at fault: then nothing is said about what refers to it.</summary>
    public static FeatureInScope? Find(BookRow row)
    {
        if (row.IsBroken || Codes.Find<FeatureType>(row["type"]) is not { } type)
        {
            return null;
        }

        var unit = UnitTable.Find(row["unit"]);
        var needsUnit = type is FeatureType.Quantity or FeatureType.Curve;
        return needsUnit && unit is null ? null : new FeatureInScope(row["kind"], row["feature"], type, unit, row.List("choices"));
    }

    /// <summary>The built-in choice of every kind.</summary>
    public static FeatureInScope PresentOf(string kind) => new(kind, Feature.Present.Code, FeatureType.Choice, null, Feature.Present.Choices);
}

/// <summary>What the checks need to know of a part.</summary>
internal sealed record PartInScope(string Id, string Kind, string Book);

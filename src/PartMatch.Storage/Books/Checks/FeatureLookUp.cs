using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Finds the feature that a cell names.</summary>
internal static class FeatureLookUp
{
    /// <summary>The feature, or null: reported when the kind certainly has none of that name, silent when its own declaration is at fault.</summary>
    /// <param name="kind">Null when not known; then nothing is said.</param>
    public static FeatureInScope? Find(BookScope scope, BookRow row, string? kind, string column, ErrorList errors) =>
        Find(scope, row, kind, column, row[column], errors);

    /// <summary>The same for one item of a list cell.</summary>
    public static FeatureInScope? Find(BookScope scope, BookRow row, string? kind, string column, string code, ErrorList errors)
    {
        if (kind is null || code.Length == 0)
        {
            return null;
        }

        if (scope.LacksFeature(kind, code))
        {
            errors.Add(row, column, $"the kind {kind} has no feature '{code}'", () => NearestCode.Find(code, scope.FeaturesOf(kind)));
            return null;
        }

        return scope.FindFeature(kind, code);
    }
}

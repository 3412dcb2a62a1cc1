using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>The families of the base.</summary>
public sealed class FamilyStore(Database database)
{
    /// <summary>Every family, in ordinal order of its code.</summary>
    public IReadOnlyList<FamilySummary> List() => throw new NotImplementedException(database.Path);

    /// <summary>The facts of one family, or null when no book has that name. The same instance until the base changes.</summary>
    public FamilyFacts? FindFamily(string code) => throw new NotImplementedException(code);
}

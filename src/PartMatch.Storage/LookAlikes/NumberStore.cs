using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.LookAlikes;

/// <summary>Every number of the base, for the search for look-alikes.</summary>
public sealed class NumberStore(Database database)
{
    /// <summary>Each part's own number (as sort service) and every further number, ordered by key, maker, part. The same instance until the base changes.</summary>
    public IReadOnlyList<KnownNumber> All() => throw new NotImplementedException(database.Path);
}

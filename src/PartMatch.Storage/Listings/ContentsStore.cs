using PartMatch.Core.Catalogue;
using PartMatch.Storage.Parts;

namespace PartMatch.Storage.Listings;

/// <summary>What every kit and assembly of the base holds.</summary>
public sealed class ContentsStore(Database database)
{
    private readonly Snapshot<ILookup<string, ContentsRow>> _contents = new(database);

    /// <summary>Rows by set, ordered by part. The same instance until the base changes.</summary>
    public ILookup<string, ContentsRow> All() =>
        _contents.Find("", connection => new ContentsReader(connection).All().ToLookup(row => row.Set, StringComparer.Ordinal))
        ?? throw new InvalidOperationException("A list is never absent.");
}

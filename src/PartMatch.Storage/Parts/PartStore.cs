using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Parts;

/// <summary>The parts of the base, whatever book describes them.</summary>
public sealed class PartStore(Database database)
{
    /// <summary>
    /// The parts a written number can mean, ordered by id: parts whose own number has this key; where there is none, parts that carry it as a further
    /// number; casting marks only where nothing else is found.
    /// </summary>
    /// <param name="maker">Only numbers of this maker; null for any.</param>
    public IReadOnlyList<Part> FindByNumber(string number, string? maker) => throw new NotImplementedException(database.Path);

    /// <summary>The part of that id, <c>maker:number</c>, the number read as a number key; or null.</summary>
    public Part? FindPart(string id) => throw new NotImplementedException(id);

    /// <summary>The part of that id with everything that is said about it, or null.</summary>
    public PartRecord? FindRecord(string id) => throw new NotImplementedException(id);

    /// <summary>Every part of a kind over the whole base, ordered by id.</summary>
    public IReadOnlyList<Part> ListOfKind(string kind) => throw new NotImplementedException(kind);

    /// <summary>
    /// Parts one of whose numbers begins with the query, then those one of whose numbers contains it, then those whose name has all its words
    /// (as beginnings of words); each group ordered by id.
    /// </summary>
    /// <param name="limit">Parts per page, 1 to 200.</param>
    /// <param name="cursor">From the page before; null for the first page.</param>
    /// <exception cref="ArgumentException">The cursor is not one that this store gave out.</exception>
    public PartPage Search(string query, int limit, string? cursor) => throw new NotImplementedException(query);
}

using PartMatch.Core.Catalogue;
using PartMatch.Storage.Parts;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Http;

/// <summary>The parts that a question about sums names, each under its parameter.</summary>
internal sealed class NamedParts
{
    private readonly Dictionary<string, Part> _parts = new(StringComparer.Ordinal);

    private const int MostNear = 3;

    private NamedParts()
    {
    }

    /// <summary>What is wrong with the first number that names no part or several; null where all name one.</summary>
    public Problem? Problem { get; private set; }

    public Part? this[string field] => _parts.GetValueOrDefault(field);

    /// <param name="asked">Parameters and what was written in them; null where one was left out.</param>
    public static NamedParts Find(PartStore store, params IReadOnlyList<(string Field, string? Written)> asked)
    {
        var named = new NamedParts();
        foreach (var (field, written) in asked.Where(one => !string.IsNullOrEmpty(one.Written)))
        {
            var found = NamedPart.Find(written!, null, store);
            if (found is { IsAmbiguous: false, Part: { } part })
            {
                named._parts[field] = part;
                continue;
            }

            named.Problem ??= found.IsAmbiguous
                ? found.ToProblem(field)
                : Http.Problem.Of("bad-question", new FieldError(field, written!, "a number that the base knows",
                    $"{Near(store, written!)}look it up under Find a part (/api/parts?q=), or leave it out and give its measurements"));
        }

        return named;
    }

    /// <summary>Numbers that begin as it is written, for the mend; nothing where none does.</summary>
    private static string Near(PartStore store, string written)
    {
        var near = store.Search(NamedPart.Split(written).Number, MostNear, null).Parts;
        return near.Count == 0 ? "" : $"did you mean {string.Join(", ", near.Select(part => part.Part))}? Else ";
    }
}

using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Openings;

/// <summary>A position that is taken off or worked on.</summary>
/// <param name="Chain">From what is changed for its own sake, by what has to come off for it, to this position; it alone where it is changed itself.</param>
public sealed record Disturbed(string Position, IReadOnlyList<string> Chain)
{
    /// <summary>Is it changed or worked on itself, and not only in the way?</summary>
    public bool IsForItself => Chain.Count == 1;
}

/// <summary>Which positions are disturbed: those that are changed or worked on, and all that has to come off first.</summary>
public static class Disturbance
{
    /// <param name="variants">Engines whose way of coming apart counts: the donor as it is, and what it becomes.</param>
    /// <param name="changed">Positions at which something else than plain keeping is done.</param>
    /// <param name="isThere">Has the donor anything there? What is not there need not come off, and keeps nothing else on.</param>
    /// <returns>By position, each with its shortest chain; of several of one length the first in ordinal order.</returns>
    public static IReadOnlyDictionary<string, Disturbed> Of(
        FamilyFacts facts, IReadOnlyCollection<string> variants, IEnumerable<string> changed, Func<string, bool> isThere)
    {
        var first = Rows(facts, variants).ToLookup(row => row.Position, row => row.OffFirst, StringComparer.Ordinal);
        var found = changed.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToDictionary(position => position, position => new Disturbed(position, [position]));
        var next = new Queue<Disturbed>(found.Values);
        while (next.TryDequeue(out var at))
        {
            foreach (var off in first[at.Position].Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Where(isThere))
            {
                if (found.TryAdd(off, new Disturbed(off, [.. at.Chain, off])))
                {
                    next.Enqueue(found[off]);
                }
            }
        }

        return found;
    }

    /// <summary>Openings that hold on any of these engines; what was retracted does not count.</summary>
    internal static IEnumerable<Opening> Rows(FamilyFacts facts, IReadOnlyCollection<string> variants) =>
        facts.Openings.Where(row => row.Evidence?.IsRetracted != true && variants.Any(row.HoldsFor));

    /// <summary>Renewals that hold on any of these engines; what was retracted does not count.</summary>
    internal static IEnumerable<Renewal> Renewals(FamilyFacts facts, IReadOnlyCollection<string> variants) =>
        facts.Renewals.Where(row => row.Evidence?.IsRetracted != true && variants.Any(row.HoldsFor));
}

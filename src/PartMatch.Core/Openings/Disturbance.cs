using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Openings;

/// <summary>How a position comes to be disturbed.</summary>
public enum DisturbedBy
{
    /// <summary>Something else is put there, or it is worked on.</summary>
    Itself,

    /// <summary>It has to be off before another can come off.</summary>
    Way,

    /// <summary>It is renewed because another is disturbed.</summary>
    Renewal,
}

/// <summary>A position that is taken off, worked on or renewed.</summary>
/// <param name="Chain">From what is changed for its own sake, step by step to this position; it alone where it is changed itself.</param>
/// <param name="By">The last step.</param>
public sealed record Disturbed(string Position, IReadOnlyList<string> Chain, DisturbedBy By);

/// <summary>Which positions are disturbed: those that are changed or worked on, and all that has to come off first.</summary>
public static class Disturbance
{
    /// <param name="variants">Engines whose way of coming apart counts: the donor as it is, and what it becomes.</param>
    /// <param name="changed">Positions at which something else than plain keeping is done.</param>
    /// <param name="isThere">Has the donor anything there? What is not there need not come off, and keeps nothing else on.</param>
    /// <returns>By position, each with its shortest chain; of several of one length the first in ordinal order.</returns>
    public static IReadOnlyDictionary<string, Disturbed> Of(
        FamilyFacts facts, IReadOnlyCollection<string> variants, IReadOnlyCollection<string> changed, Func<string, bool> isThere)
    {
        var steps = new Steps(
            Rows(facts, variants).Where(row => isThere(row.OffFirst)).ToLookup(row => row.Position, row => row.OffFirst, StringComparer.Ordinal),
            Renewals(facts, variants).Where(row => row.Renewed != row.Opened && changed.Contains(row.Renewed))
                .ToLookup(row => row.Opened, row => row.Renewed, StringComparer.Ordinal));

        // What is renewed for another is not changed for its own sake: nothing may be the ground of itself.
        var roots = changed.Order(StringComparer.Ordinal).Distinct(StringComparer.Ordinal).ToList();
        foreach (var position in Renewals(facts, variants).Select(row => row.Renewed).Where(roots.Contains).Distinct(StringComparer.Ordinal).ToList())
        {
            var others = roots.Where(other => other != position).ToList();
            roots = steps.From(others).ContainsKey(position) ? others : roots;
        }

        return steps.From(roots);
    }

    /// <summary>Openings that hold on any of these engines; what was retracted does not count.</summary>
    internal static IEnumerable<Opening> Rows(FamilyFacts facts, IReadOnlyCollection<string> variants) =>
        facts.Openings.Where(row => row.Evidence?.IsRetracted != true && variants.Any(row.HoldsFor));

    /// <summary>Renewals that hold on any of these engines; what was retracted does not count.</summary>
    internal static IEnumerable<Renewal> Renewals(FamilyFacts facts, IReadOnlyCollection<string> variants) =>
        facts.Renewals.Where(row => row.Evidence?.IsRetracted != true && variants.Any(row.HoldsFor));

    private sealed record Steps(ILookup<string, string> OffFirst, ILookup<string, string> Renewed)
    {
        public Dictionary<string, Disturbed> From(IEnumerable<string> roots)
        {
            var found = roots.ToDictionary(position => position, position => new Disturbed(position, [position], DisturbedBy.Itself), StringComparer.Ordinal);
            var next = new Queue<Disturbed>(found.Values);
            while (next.TryDequeue(out var at))
            {
                var steps = OffFirst[at.Position].Select(position => (Position: position, By: DisturbedBy.Way))
                    .Concat(Renewed[at.Position].Select(position => (Position: position, By: DisturbedBy.Renewal)));
                foreach (var (position, by) in steps.OrderBy(step => step.By).ThenBy(step => step.Position, StringComparer.Ordinal))
                {
                    if (found.TryAdd(position, new Disturbed(position, [.. at.Chain, position], by)))
                    {
                        next.Enqueue(found[position]);
                    }
                }
            }

            return found;
        }
    }
}

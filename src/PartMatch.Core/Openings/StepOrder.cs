using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Openings;

/// <summary>
/// Positions in the order in which they come off: each after all that has to be off before it, and after what goes in later than it where both are put in.
/// </summary>
public static class StepOrder
{
    /// <param name="variant">The engine that comes apart.</param>
    /// <param name="positions">What comes off, in the order that is wished where the openings leave it free.</param>
    /// <exception cref="ArgumentException">The openings, or they with the bench order, run in a ring; the import refuses that.</exception>
    public static IReadOnlyList<string> Of(FamilyFacts facts, string variant, IReadOnlyList<string> positions)
    {
        var first = First(facts, variant, positions);
        var before = positions.Distinct().ToDictionary(position => position, position => Before(first, position), StringComparer.Ordinal);
        var order = new List<string>();
        var open = new HashSet<string>(StringComparer.Ordinal);
        foreach (var position in positions)
        {
            Visit(position);
        }

        return order;

        // One thing after the other is made free, with all that is in its way, first what itself waits for most: so neighbours stand together,
        // and bolts with what they hold.
        void Visit(string position)
        {
            if (order.Contains(position))
            {
                return;
            }

            if (!open.Add(position))
            {
                throw new ArgumentException($"What comes off before {position} runs in a ring.", nameof(positions));
            }

            foreach (var off in first[position].OrderByDescending(off => before[off].Count))
            {
                Visit(off);
            }

            order.Add(position);
        }
    }

    /// <summary>Everything that comes off before it, however far before.</summary>
    private static HashSet<string> Before(ILookup<string, string> first, string position)
    {
        var before = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>(first[position]);
        while (open.TryPop(out var off))
        {
            if (before.Add(off))
            {
                foreach (var sooner in first[off])
                {
                    open.Push(sooner);
                }
            }
        }

        return before;
    }

    /// <summary>Of each of these positions those that come off before it.</summary>
    public static ILookup<string, string> First(FamilyFacts facts, string variant, IReadOnlyCollection<string> positions) =>
        Disturbance.Rows(facts, [variant]).Select(row => (Later: row.Position, Sooner: row.OffFirst))
            .Concat(Bench(facts, variant).Select(row => (Later: row.First, Sooner: row.Then)))
            .Where(row => positions.Contains(row.Later) && positions.Contains(row.Sooner)).Distinct()
            .ToLookup(row => row.Later, row => row.Sooner, StringComparer.Ordinal);

    /// <summary>What goes in first on this engine; what was retracted does not count.</summary>
    public static IEnumerable<BenchOrder> Bench(FamilyFacts facts, string variant) =>
        facts.BenchOrders.Where(row => row.Evidence?.IsRetracted != true && row.HoldsFor(variant));
}

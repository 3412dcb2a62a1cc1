using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Builds;

/// <summary>
/// Is a line, with everything its fit answer looks at, as the donor came out of the factory? Then the engine itself shows that it fits, also where the
/// books leave open which of several parts it has. Common practice, no source.
/// </summary>
internal sealed class AsBuilt(BuildTerms terms, FitMemory memory)
{
    private readonly Dictionary<string, string?> _keys = new(StringComparer.Ordinal);

    /// <param name="plan">What is at every position.</param>
    /// <param name="works">Works that the plan does.</param>
    public bool Is(Candidate candidate, IReadOnlyDictionary<string, Candidate> plan, IReadOnlySet<string> works)
    {
        if (!IsOwn(candidate))
        {
            return false;
        }

        var reach = memory.Reach(terms.Facts.Family, candidate.Reference, candidate.Position);
        return reach.All(position => !plan.TryGetValue(position, out var other) || other.Position == candidate.Position || HasIt(other))
            && !works.Select(terms.Facts.Family.FindWork).OfType<Work>().Any(work => PlanWorks.PositionsOf(work).Any(reach.Contains));
    }

    /// <summary>Is it what the donor has there, and is the donor's way of running wished?</summary>
    public bool IsOwn(Candidate candidate) => candidate.Reference == terms.Build.Donor.Variant && HasIt(candidate);

    /// <summary>Is it what the donor has there? A measured one is not: its readings speak.</summary>
    public bool HasIt(Candidate candidate) => KeyOf(candidate.Position) == candidate.FitKey;

    private string? KeyOf(string position)
    {
        if (!_keys.TryGetValue(position, out var key))
        {
            string[] parts = [.. terms.FittedToDonor(position).Select(fitment => fitment.Part ?? Part.None).Distinct(StringComparer.Ordinal)];
            string[] known = parts is [Part.None] ? parts : [.. parts.Where(part => part != Part.None)];
            _keys[position] = key = known.Length == 0 ? null : string.Join('|', known);
        }

        return key;
    }
}

using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Sums;

/// <summary>Is a part that a question gives for a place of a kind that sits there?</summary>
internal static class PartKinds
{
    /// <param name="roles">A part of any position with one of them will do.</param>
    /// <returns>A refusal that names both kinds; null where the part will do, is not given, or the family has no such place.</returns>
    public static SumRefused? FindFault(FamilyFacts facts, string field, Part? part, params string[] roles)
    {
        var kinds = facts.Positions.Where(position => roles.Contains(position.Role)).Select(position => position.Kind).Distinct().ToList();
        string Name(string kind) => facts.FindKind(kind)?.Name ?? kind;
        return part is null || kinds.Count == 0 || kinds.Contains(part.Kind) ? null : new SumRefused(
            "wrong-kind", field, $"{part.Id} is of another kind: it is recorded as {Name(part.Kind)}.", $"{part.Id}: {Name(part.Kind)}",
            string.Join(" or ", kinds.Select(Name)), "look the number up under Find a part, or leave it out for what the maker fitted");
    }
}

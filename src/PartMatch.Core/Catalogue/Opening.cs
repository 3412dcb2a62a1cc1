namespace PartMatch.Core.Catalogue;

/// <summary>Before what sits at a position can be taken off, something else has to be off.</summary>
/// <param name="OffFirst">The position that comes off first.</param>
/// <param name="Variants">Variants it holds for; empty = all.</param>
public sealed record Opening(string Position, string OffFirst, IReadOnlyList<string> Variants, Evidence? Evidence, string? Note)
{
    public bool HoldsFor(string variant) => Variants.Count == 0 || Variants.Contains(variant, StringComparer.Ordinal);
}

/// <summary>When what sits at one position is disturbed, what sits at another is renewed.</summary>
/// <param name="Opened">The position that is disturbed.</param>
/// <param name="Renewed">A gasket, a seal, a fastener, or what is poured and spread: a position too.</param>
/// <param name="Amount">Of what is poured or spread there; null for a piece, or where it is not recorded.</param>
/// <param name="Bead">How a sealant is laid, in words.</param>
/// <param name="CureHours">Until it may be filled; null where nothing cures, or it is not recorded.</param>
/// <param name="Variants">Variants it holds for; empty = all.</param>
public sealed record Renewal(
    string Opened, string Renewed, QuantityReading? Amount, string? Bead, decimal? CureHours, IReadOnlyList<string> Variants, Evidence? Evidence, string? Note)
{
    public bool HoldsFor(string variant) => Variants.Count == 0 || Variants.Contains(variant, StringComparer.Ordinal);
}

/// <summary>What is known to be weak on a variant, and what mends it.</summary>
/// <param name="What">A sentence.</param>
/// <param name="RemedyPart">The part that mends it; null where none does.</param>
/// <param name="RemedyWork">The work that mends it; null where none does.</param>
/// <param name="Span">The engines that have it.</param>
public sealed record WeakPoint(
    string Code, string Variant, string Position, string What, string? RemedyPart, string? RemedyWork, Span Span, Evidence? Evidence, string? Note);

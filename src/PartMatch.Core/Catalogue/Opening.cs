namespace PartMatch.Core.Catalogue;

/// <summary>Before what sits at a position can be taken off, something else has to be off.</summary>
/// <param name="OffFirst">The position that comes off first.</param>
/// <param name="Variants">Variants it holds for; empty = all.</param>
public sealed record Opening(string Position, string OffFirst, IReadOnlyList<string> Variants, Evidence? Evidence, string? Note)
{
    public bool HoldsFor(string variant) => Variants.Count == 0 || Variants.Contains(variant, StringComparer.Ordinal);
}

/// <summary>How two that go in one after the other belong together.</summary>
public enum BenchJoin
{
    /// <summary>The later one goes into or onto the first: a plug into its head.</summary>
    Into,

    /// <summary>The first is joined to the later one on the bench, before that goes in: a piston to its rod.</summary>
    OnBench,

    /// <summary>The first is chosen by measurement with the later one in its place: a tappet under its camshaft.</summary>
    ChosenUnder,
}

/// <summary>Where both are put in anyway, this one first; taking apart, the other way round. Neither is disturbed for it.</summary>
/// <param name="How">Null where they only follow each other.</param>
/// <param name="Variants">Variants it holds for; empty = all.</param>
public sealed record BenchOrder(string First, string Then, BenchJoin? How, IReadOnlyList<string> Variants, Evidence? Evidence, string? Note)
{
    public bool HoldsFor(string variant) => Variants.Count == 0 || Variants.Contains(variant, StringComparer.Ordinal);
}

/// <summary>When a builder minds something.</summary>
public enum ReminderAt
{
    /// <summary>Before it comes off.</summary>
    TakenOff,

    /// <summary>When something is done to it.</summary>
    Worked,

    /// <summary>As it goes on.</summary>
    PutOn,

    /// <summary>What of it is tightened; said where no tightening is recorded.</summary>
    Tightened,

    /// <summary>Before the engine is started.</summary>
    Start,
}

/// <summary>What a builder asks or minds at a part of a kind: a question or a caution, never a number.</summary>
/// <param name="Works">Only where one of these works is done on it; empty = with any.</param>
/// <param name="Text">A sentence; of <see cref="ReminderAt.Tightened"/> what is tightened: "the bolts of the main caps".</param>
public sealed record Reminder(string Kind, string Code, ReminderAt At, IReadOnlyList<string> Works, string Text, Evidence? Evidence, string? Note);

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

using PartMatch.Core.Measures;

namespace PartMatch.Core.Catalogue;

/// <summary>An engine family: the book that describes it.</summary>
public sealed record Family(string Code, string Title, string Maker, string? Note);

/// <summary>One engine of the family as built.</summary>
public sealed record Variant(string Code, string Name, Span Span, Evidence? Evidence);

/// <summary>A named place on the engine where one kind of part sits.</summary>
/// <param name="Group">Positions that belong together.</param>
/// <param name="Role">What the sums use the position for, or null.</param>
public sealed record Position(string Code, string Name, string Group, string Kind, string? Role)
{
    /// <summary>Minutes until the position can be seen on a complete, assembled engine; 0 = from outside, null = not recorded.</summary>
    public decimal? AccessMinutes { get; init; }

    /// <summary>What has to come off to see it; null when not recorded.</summary>
    public string? Access { get; init; }
}

/// <summary>One fact about the engine of a variant: a quantity, a count or a word.</summary>
public sealed record EngineFact(string Variant, string Property, Reading Reading, Evidence? Evidence);

/// <summary>What the maker fitted.</summary>
/// <param name="Part">The part, or null where the engine is known to carry nothing.</param>
/// <param name="Quantity">Pieces per engine; 0 with no part; null when not recorded.</param>
public sealed record Fitment(string Variant, string Position, string? Part, Span Span, int? Quantity, Evidence? Evidence);

/// <summary>An explicit demand of a position; it replaces the default demand for that feature and effect.</summary>
/// <param name="Demand">One value, or for <see cref="Relation.OneOf"/> and <see cref="Relation.Covers"/> a set.</param>
public sealed record Need(string Variant, string Position, string Feature, Effect Effect, Relation Relation, Reading Demand, Evidence? Evidence, string? Note);

/// <summary>A feature of whatever sits at a position.</summary>
public sealed record FeatureAt(string Position, string Feature);

/// <summary>Two positions that mate, and the relation between a feature on each side.</summary>
/// <param name="Band">For <see cref="Relation.Band"/>: what right minus left may be, base units.</param>
/// <param name="Unit">The unit the band was written in, or null for counts and choices.</param>
/// <param name="Variants">Variants it holds for; empty = all.</param>
public sealed record Joint(
    string Code, FeatureAt Left, Relation Relation, FeatureAt Right, Interval Band, Unit? Unit, Effect Effect, string? Work, Consequence Consequence, IReadOnlyList<string> Variants, Evidence? Evidence)
{
    public bool HoldsFor(string variant) => Variants.Count == 0 || Variants.Contains(variant, StringComparer.Ordinal);
}

/// <summary>A signed sum of features over several positions, plus a constant, that must lie in a band. Base units.</summary>
public sealed record Stack(
    string Code, IReadOnlyList<StackTerm> Terms, Interval Band, Unit? Unit, Effect Effect, string? Work, Consequence Consequence, IReadOnlyList<string> Variants, Evidence? Evidence)
{
    public bool HoldsFor(string variant) => Variants.Count == 0 || Variants.Contains(variant, StringComparer.Ordinal);
}

/// <summary>One term of a stack.</summary>
/// <param name="Sign">+1 or −1.</param>
public abstract record StackTerm(int Sign);

public sealed record FeatureTerm(int Sign, FeatureAt At) : StackTerm(Sign);

public sealed record ConstantTerm(int Sign, decimal Value) : StackTerm(Sign);

/// <summary>A relation of a feature to a value or a set of values.</summary>
public sealed record Condition(FeatureAt At, Relation Relation, Reading Value);

/// <summary>"When the part at A has …, position B must hold a part with …".</summary>
public sealed record Companion(string Code, Condition When, Condition Then, IReadOnlyList<string> Variants, Evidence? Evidence, string? Note)
{
    public bool HoldsFor(string variant) => Variants.Count == 0 || Variants.Contains(variant, StringComparer.Ordinal);
}

/// <summary>An old part replaced by a newer one.</summary>
/// <param name="Quantity">How many of the new one stand for one old one.</param>
/// <param name="With">Parts that must come along.</param>
public sealed record Supersession(
    string OldPart, string NewPart, SupersessionWay Way, int Quantity, IReadOnlyList<string> With, Span Span, IReadOnlyList<string> Variants, Evidence? Evidence, string? Note)
{
    public bool HoldsFor(string variant) => Variants.Count == 0 || Variants.Contains(variant, StringComparer.Ordinal);
}

/// <summary>One row of a table from a measured value to the graded part to order.</summary>
public sealed record SelectRow(string Position, FeatureAt Measured, decimal From, decimal To, Unit Unit, string Part, Evidence? Evidence);

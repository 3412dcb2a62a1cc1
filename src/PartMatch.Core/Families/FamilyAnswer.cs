using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;
using PartMatch.Core.Variants;

namespace PartMatch.Core.Families;

/// <summary>A family: its variants, and the positions that every one of them has.</summary>
/// <param name="Variants">In ordinal order of their codes.</param>
/// <param name="Groups">Groups of positions, in ordinal order.</param>
/// <param name="Positions">In ordinal order of their codes.</param>
public sealed record FamilyAnswer(
    FamilyAsked Asked, string Family, string Title, string Maker, string? Note, IReadOnlyList<VariantSummary> Variants, IReadOnlyList<string> Groups, IReadOnlyList<PositionSummary> Positions)
{
    /// <summary>The address that asks this question again.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>Every family of the base, in ordinal order of its code.</summary>
public sealed record FamiliesAnswer(NothingAsked Asked, IReadOnlyList<FamilySummary> Families)
{
    /// <summary>The address that asks this question again.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question has no parameters.</summary>
public sealed record NothingAsked;

public sealed record FamilyAsked(string Family);

/// <summary>A named place on the engine.</summary>
/// <param name="Role">What the sums use the position for; absent where they do not.</param>
public sealed record PositionSummary(string Position, string Name, string Group, string Kind, string? Role);

/// <summary>A variant in a list; open ends of its span are absent.</summary>
public sealed record VariantSummary(string Variant, string Name, BuiltSpan? Built, SerialSpan? Serial, SourceShown? Source)
{
    public static VariantSummary Of(Variant variant) =>
        new(variant.Code, variant.Name, BuiltSpan.Of(variant.Span), SerialSpan.Of(variant.Span), SourceShown.Of(variant.Evidence));
}

/// <summary>One variant: the engine as built, and what the maker fitted at every position.</summary>
/// <param name="Engine">Facts about the engine as a whole, in ordinal order of the property.</param>
/// <param name="Positions">In ordinal order of their codes.</param>
public sealed record VariantAnswer(VariantAsked Asked, VariantSummary Variant, IReadOnlyList<DescribedFact> Engine, IReadOnlyList<VariantPosition> Positions)
{
    /// <summary>The address that asks this question again.</summary>
    public string Permalink { get; init; } = "";
}

public sealed record VariantAsked(string Family, string Variant);

/// <summary>A fact about the engine: a quantity, or text for counts and words.</summary>
public sealed record DescribedFact(string Property, string Text, Quantity? Quantity, SourceShown? Source);

/// <param name="State">Fitted, known to carry nothing, or not recorded.</param>
/// <param name="Parts">Every part fitted over the years, with its span.</param>
public sealed record VariantPosition(string Position, string Name, string Group, string Kind, FittedState State, IReadOnlyList<FittedPart> Parts);

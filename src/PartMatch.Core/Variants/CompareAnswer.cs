using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Variants;

/// <summary>Which positions a comparison lists; the counts are always over all of them.</summary>
public enum Show
{
    All,
    Differences,
    Stoppers,
}

/// <summary>Shared: the same part, or parts that stand in for each other both ways. Only on some: fitted on one, known to be absent on another.</summary>
public enum PositionStatus
{
    Shared,
    Differs,
    OnlyOnSome,
    NotKnown,
}

public enum FittedState
{
    Fitted,
    None,
    NotRecorded,
}

/// <summary>Position by position, what do these variants share?</summary>
/// <param name="Variants">2 to 6, in the order of the columns.</param>
/// <param name="Group">Only positions of this group, or null for all.</param>
/// <param name="Built">Build date by variant, where one is known.</param>
public sealed record CompareQuestion(IReadOnlyList<string> Variants, string? Group, Show Show, IReadOnlyDictionary<string, BuildDate> Built)
{
    public CompareAsked AsAsked(string family) => new(
        family, Variants, Group, Show, [.. Variants.Where(Built.ContainsKey).Select(variant => $"{variant}:{Built[variant].Text}")]);
}

/// <summary>The question with its defaults filled in.</summary>
public sealed record CompareAsked(string Family, IReadOnlyList<string> Variants, string? Group, Show Show, IReadOnlyList<string> Built);

/// <param name="Stoppers">Positions where some part of one variant does not fit another.</param>
public sealed record CompareCounts(int Shared, int Differs, int OnlyOnSome, int NotKnown, int Stoppers);

/// <param name="Positions">In ordinal order of their codes.</param>
public sealed record CompareAnswer(CompareAsked Asked, CompareCounts Counts, IReadOnlyList<ComparedPosition> Positions)
{
    /// <summary>What the words for the sureness of each pair mean, surest first.</summary>
    public IReadOnlyList<SurenessMeaning> SurenessMeanings { get; init; } = SurenessMeaning.All;

    /// <summary>The address that asks this question again.</summary>
    public string Permalink { get; init; } = "";
}

/// <param name="Fitted">One per variant, in the order asked.</param>
/// <param name="Across">Every ordered pair of variants.</param>
public sealed record ComparedPosition(
    string Position, string Name, string Group, PositionStatus Status, IReadOnlyList<VariantFitted> Fitted, IReadOnlyList<FeatureDifference> Differences, IReadOnlyList<AcrossPair> Across);

public sealed record VariantFitted(string Variant, FittedState State, IReadOnlyList<FittedPart> Parts);

/// <summary>A part as fitted, with its span; members of the span that are open are absent.</summary>
public sealed record FittedPart(string Part, string Number, string Name, int? Quantity, BuiltSpan? Built, SerialSpan? Serial, string? Mark)
{
    public static FittedPart Of(Fitment fitment, Part part) => new(
        part.Id, part.Number, part.Name, fitment.Quantity,
        BuiltSpan.Of(fitment.Span), SerialSpan.Of(fitment.Span), fitment.Span.Mark);
}

public sealed record BuiltSpan(string? From, string? To)
{
    /// <summary>The build dates of a span, or null when both ends are open.</summary>
    public static BuiltSpan? Of(Span span) => span.BuiltFrom is null && span.BuiltTo is null ? null : new(span.BuiltFrom?.Text, span.BuiltTo?.Text);
}

public sealed record SerialSpan(long? From, long? To)
{
    /// <summary>The serial numbers of a span, or null when both ends are open.</summary>
    public static SerialSpan? Of(Span span) => span.SerialFrom is null && span.SerialTo is null ? null : new(span.SerialFrom, span.SerialTo);
}

/// <summary>A feature in which the fitted parts differ, or are not known to agree.</summary>
/// <param name="Effect">What a difference means by the kind's rule; absent where no rule speaks of the feature.</param>
/// <param name="Same">No, or not known.</param>
public sealed record FeatureDifference(string Feature, string Name, Effect? Effect, Met Same, IReadOnlyList<VariantValue> Values);

public sealed record VariantValue(string Variant, ComparedValue Value);

/// <summary>Would what one variant has go on another?</summary>
public sealed record AcrossPair(string From, string To, Mounts Mounts, Runs Runs, Headline Headline, Sureness Sureness, string Fit);

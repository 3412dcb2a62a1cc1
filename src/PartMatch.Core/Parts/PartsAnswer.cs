using System.Diagnostics.CodeAnalysis;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Measures;
using PartMatch.Core.Variants;

namespace PartMatch.Core.Parts;

/// <summary>The parts that a written number can mean.</summary>
/// <param name="Parts">Ordered by part; empty when no book knows the number.</param>
public sealed record PartsAnswer(PartsAsked Asked, IReadOnlyList<PartDescription> Parts)
{
    /// <summary>The address that asks this question again.</summary>
    public string Permalink { get; init; } = "";
}

/// <param name="Number">As written.</param>
/// <param name="NumberKey">What is compared: upper-cased, separators removed.</param>
/// <param name="Maker">Only numbers of this maker; null for any.</param>
public sealed record PartsAsked(string Number, string NumberKey, string? Maker);

/// <summary>A part with everything the base holds of it.</summary>
/// <param name="Part"><c>maker:number as written</c>.</param>
/// <param name="Values">One per feature of the kind that has a recorded value, in ordinal order; then features with none are in <paramref name="NotRecorded"/>.</param>
/// <param name="NotRecorded">Features of the kind without any recorded value, in ordinal order.</param>
/// <param name="Numbers">Its own service number first, then by maker and number.</param>
/// <param name="Fitted">Where the maker fitted it, ordered by family, variant, position and span.</param>
/// <param name="ReplacedBy">Ordered by the newer part.</param>
/// <param name="Replaces">Ordered by the older part.</param>
/// <param name="Holds">What it holds when it is a kit or an assembly, ordered by part.</param>
/// <param name="HeldIn">Kits and assemblies that hold it, ordered by set.</param>
public sealed record PartDescription(
    string Part,
    string Maker,
    string? MakerName,
    string Number,
    string NumberKey,
    string Kind,
    string KindName,
    string Name,
    string? Note,
    string Book,
    SourceShown? Source,
    IReadOnlyList<DescribedValue> Values,
    IReadOnlyList<string> NotRecorded,
    IReadOnlyList<DescribedCurve> Curves,
    IReadOnlyList<DescribedNumber> Numbers,
    IReadOnlyList<PlaceFitted> Fitted,
    IReadOnlyList<Replacement> ReplacedBy,
    IReadOnlyList<Replacement> Replaces,
    IReadOnlyList<ContentsRow> Holds,
    IReadOnlyList<ContentsRow> HeldIn,
    IReadOnlyList<Caution> Cautions);

/// <summary>A feature and what is known of it.</summary>
/// <param name="Known">After the sources are weighed.</param>
/// <param name="Disputed">Do equally good sources exclude each other?</param>
/// <param name="Recorded">Every recorded value, retracted ones too, ordered by evidence.</param>
public sealed record DescribedValue(string Feature, string Name, ComparedValue Known, bool Disputed, IReadOnlyList<DescribedReading> Recorded);

/// <summary>One value as one source states it.</summary>
/// <param name="Quantity">Absent for counts and choices.</param>
/// <param name="Minus">What the maker allows below, in the unit of the quantity; absent when not recorded.</param>
/// <param name="Plus">What the maker allows above.</param>
/// <param name="Uncertainty">How well the value is known.</param>
public sealed record DescribedReading(string Text, Quantity? Quantity, decimal? Minus, decimal? Plus, decimal? Uncertainty, SourceShown? Source);

/// <summary>A recorded curve, such as dead time over voltage and pressure.</summary>
/// <param name="Points">Ordered by x, then y.</param>
public sealed record DescribedCurve(string Curve, IReadOnlyList<DescribedPoint> Points);

public sealed record DescribedPoint(Quantity X, Quantity? Y, Quantity Value, string? Evidence);

/// <summary>A source as an answer shows it.</summary>
public sealed record SourceShown(string Evidence, EvidenceGrade Grade, string? Date, string? Author, string? Source, string? RetractedOn, string? RetractedWhy)
{
    /// <summary>What more is recorded of it; absent where nothing is.</summary>
    public SourceDetailsShown? Details { get; init; }

    [return: NotNullIfNotNull(nameof(evidence))]
    public static SourceShown? Of(Evidence? evidence) => evidence is null
        ? null
        : new(evidence.Code, evidence.Grade, evidence.Date, evidence.Author, evidence.Source, evidence.RetractedOn, evidence.RetractedWhy) { Details = SourceDetailsShown.Of(evidence.Details) };
}

/// <summary>More about a source.</summary>
/// <param name="Hours">Under load.</param>
/// <param name="Output">Power while it ran.</param>
/// <param name="Page">Page of the document, or what the link leads to.</param>
public sealed record SourceDetailsShown(SpeaksOf? SpeaksOf, string? Instrument, decimal? Hours, Quantity? Output, string? Fuel, string? Page, string? Note)
{
    public static SourceDetailsShown? Of(SourceDetails? details) => details is null
        ? null
        : new(
            details.SpeaksOf, details.Instrument, details.Hours,
            details.Output is QuantityReading output ? new Quantity(output.Value, UnitTable.BaseOf(output.Unit.Dimension).Symbol, output.Text) : null,
            details.Fuel, details.Page, details.Note);
}

public sealed record DescribedNumber(string Maker, string Number, NumberSort Sort);

/// <summary>A place where the maker fitted the part; open ends of its span are absent.</summary>
public sealed record PlaceFitted(string Family, string Variant, string Position, string PositionName, int? Quantity, BuiltSpan? Built, SerialSpan? Serial, string? Mark);

/// <summary>A link between an older and a newer number.</summary>
/// <param name="Part">The part at the other end.</param>
/// <param name="With">Parts that must come along.</param>
/// <param name="Variants">Variants it holds for; empty = all.</param>
public sealed record Replacement(
    string Part, SupersessionWay Way, int Quantity, IReadOnlyList<string> With, IReadOnlyList<string> Variants, BuiltSpan? Built, SerialSpan? Serial, string? Note, SourceShown? Source);

/// <summary>One page of a search.</summary>
/// <param name="Parts">Numbers that begin with the query first, then those that contain it, then names.</param>
/// <param name="Total">How many parts match in all.</param>
/// <param name="Cursor">Asks for the next page; absent on the last one.</param>
public sealed record PartSearchAnswer(PartSearchAsked Asked, IReadOnlyList<FoundPart> Parts, int Total, string? Cursor)
{
    /// <summary>The address that asks this question again.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>One part of a search.</summary>
/// <param name="LookAlikeDanger">The largest danger among what it can be taken for, where that is medium or high.</param>
public sealed record FoundPart(string Part, string Maker, string Number, string Kind, string Name, DangerLevel? LookAlikeDanger);

public sealed record PartSearchAsked(string Q, int Limit, string? Cursor);

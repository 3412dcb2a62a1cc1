using PartMatch.Core.Measures;

namespace PartMatch.Core.Catalogue;

/// <summary>A part, known by its maker and the service number the maker gives it.</summary>
/// <param name="Id"><c>maker:number as written</c>.</param>
/// <param name="Number">As written, without the maker.</param>
/// <param name="Key">Upper-cased, separators removed; unique per maker only.</param>
/// <param name="Values">Every recorded value, ordered by feature, then evidence.</param>
public sealed record Part(
    string Id, string Maker, string Number, string Key, string Kind, string Name, string? Note, Evidence? Evidence, IReadOnlyList<RecordedValue> Values, IReadOnlyList<CurvePoint> Curves)
{
    /// <summary>Stands in books for "known to carry nothing".</summary>
    public const string None = "none";

    /// <summary>Null when no book names the maker.</summary>
    public string? MakerName { get; init; }

    /// <summary>As a sentence names it: <c>I-4401 (Harl Fuel Systems)</c>; by its id where nobody names the maker.</summary>
    public string Label => MakerName is null ? Id : $"{Number} ({MakerName})";

    /// <summary>Nothing, asked about as if it were a part: what happens when the position is left empty?</summary>
    public static Part Nothing(string kind) => new(None, "", None, "", kind, "nothing", null, null, [], []);

    /// <summary>Is this the absence of a part?</summary>
    public bool IsNothing => Id == None;
}

/// <summary>One value of one feature, as one source states it.</summary>
public sealed record RecordedValue(string Feature, Reading Reading, Evidence? Evidence);

/// <summary>A value of one of the four comparable types.</summary>
/// <param name="Text">As recorded, with its unit.</param>
public abstract record Reading(string Text);

/// <summary>A quantity in base units.</summary>
/// <param name="Minus">What the maker allows below, or null when not recorded.</param>
/// <param name="Plus">What the maker allows above, or null when not recorded.</param>
/// <param name="Uncertainty">How well the value is known, or null when not recorded.</param>
/// <param name="Unit">The unit it was recorded in.</param>
public sealed record QuantityReading(decimal Value, decimal? Minus, decimal? Plus, decimal? Uncertainty, Unit Unit, string Text) : Reading(Text);

public sealed record CountReading(long Value, string Text) : Reading(Text);

public sealed record ChoiceReading(string Choice) : Reading(Choice);

/// <summary>A set of choices, in ordinal order.</summary>
public sealed record ChoicesReading(IReadOnlyList<string> Choices) : Reading(string.Join('|', Choices));

/// <summary>One point of a recorded curve, such as dead time over voltage and pressure; base units.</summary>
public sealed record CurvePoint(string Curve, decimal X, Unit XUnit, decimal? Y, Unit? YUnit, decimal Value, Unit Unit, Evidence? Evidence);

/// <summary>A number on or for a part.</summary>
/// <param name="Written">As written, without the maker.</param>
public sealed record PartNumber(string Maker, string Written, string Key, NumberSort Sort, string Part)
{
    /// <summary>Does it name the part? A casting mark or a grade may stand on many parts: it narrows, never identifies.</summary>
    public bool Identifies => Sort is not (NumberSort.CastingMark or NumberSort.Grade);
}

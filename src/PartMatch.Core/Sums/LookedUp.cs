using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Sums;

/// <summary>A number that a sum looked for.</summary>
/// <param name="Figure">Null where there is none to reckon with.</param>
/// <param name="Found">What was found instead: nothing, or sources that disagree.</param>
internal sealed record LookedUp(Figure? Figure, string Found)
{
    private static readonly LookedUp _nothing = new(null, "nothing");

    /// <summary>What the question gives, which stands before what is recorded.</summary>
    public static LookedUp? Typed(QuantityRange? range) => range is null ? null
        : new LookedUp(new Figure(Spread.Of(range), "given in the question"), range.Text);

    /// <summary>A fact of the engine as built.</summary>
    public static LookedUp Fact(FamilyFacts facts, string variant, string property) =>
        Of(Known(facts, variant, property), $"recorded of {variant} as built");

    /// <summary>A word of the engine as built; null where none is recorded.</summary>
    public static string? FindWord(FamilyFacts facts, string variant, string property) =>
        Known(facts, variant, property) is StatedChoices { Choices: [var word] } ? word : null;

    /// <summary>A quantity of the part that sits somewhere. Where the maker fitted several over the years, they have to agree.</summary>
    public static LookedUp Feature(IReadOnlyList<Part> parts, string feature)
    {
        LookedUp[] each = [.. parts.Select(part => Of(ValueSelection.Of(part, feature), $"recorded of {part.Id}"))];
        return each.Length == 0 ? _nothing
            : Array.Find(each, one => one.Figure is null) is { } lacking ? lacking
            : each.DistinctBy(one => one.Figure?.Spread).Count() == 1 ? each[0]
            : new LookedUp(null, $"different values over the years: {string.Join("; ", each.Select(one => $"{one.Found} ({one.Figure?.Source})"))}");
    }

    private static KnownValue Known(FamilyFacts facts, string variant, string property) => facts.EngineFacts
        .Where(fact => fact.Variant == variant && fact.Property == property)
        .Select(fact => ValueSelection.Of(fact.Reading, fact.Evidence))
        .FirstOrDefault(value => value is StatedValue, NotRecorded.Instance);

    private static LookedUp Of(KnownValue value, string source) => value switch
    {
        StatedQuantity quantity => new LookedUp(
            new Figure((double)(quantity.Possible.Low ?? quantity.Nominal), (double)quantity.Nominal, (double)(quantity.Possible.High ?? quantity.Nominal),
                source), quantity.Text),
        StatedCount count => new LookedUp(new Figure(count.Value, count.Value, count.Value, source), count.Text),
        DisputedValue disputed => new LookedUp(null, $"sources that disagree: {disputed.Text}"),
        _ => _nothing,
    };
}

using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>Does this part fit at this position of this variant?</summary>
/// <param name="Part">The part asked about, with its values; null when the number is in no book.</param>
/// <param name="Number">The number as asked; null when the question named a part of another variant.</param>
/// <param name="From">The variant whose part is asked about, where the question was put so.</param>
/// <param name="Built">Build date of the engine, when known.</param>
/// <param name="Serial">Serial number of the engine, when known.</param>
/// <param name="With">Neighbours that will really be there instead of what the maker fitted: position → part, or null for nothing there.</param>
public sealed record FitQuestion(
    string Variant,
    string Position,
    Part? Part,
    string? Number = null,
    string? From = null,
    BuildDate? Built = null,
    long? Serial = null,
    IReadOnlyDictionary<string, Part?>? With = null)
{
    /// <summary>The one example that is asked about; what was read on it stands in place of what is recorded of its number.</summary>
    public Item? Item { get; init; }

    /// <summary>
    /// Neighbours of which only a choice is known: position → the parts one of which will be there. They stand beside <see cref="With"/> and name other
    /// positions than it does.
    /// </summary>
    internal IReadOnlyDictionary<string, OneOfThese>? Beside { get; init; }

    /// <summary>Was this feature read on the item asked about?</summary>
    internal bool IsMeasured(string? feature) => Item?.Readings.Any(reading => reading.Feature == feature && Item.Counts(reading)) == true;

    public FitAsked AsAsked(string family) => new(
        family, Variant, Position, Part?.Id, Number, From, Built?.Text, Serial,
        [
            .. (With ?? new Dictionary<string, Part?>()).OrderBy(pair => pair.Key, StringComparer.Ordinal)
                .Select(pair => $"{pair.Key}={pair.Value?.Id ?? Catalogue.Part.None}"),
        ])
    {
        Item = Item?.Address,
    };
}

/// <summary>Parts one of which will be there.</summary>
/// <param name="IsChosen">Which one is chosen by measurement, so that one that suits is enough.</param>
internal sealed record OneOfThese(IReadOnlyList<Part> Parts, bool IsChosen);

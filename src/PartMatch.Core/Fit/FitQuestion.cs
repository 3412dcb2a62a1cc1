using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>Does this part fit at this position of this variant?</summary>
/// <param name="Part">The part asked about, with its values; null when the number is in no book.</param>
/// <param name="Built">Build date of the engine, when known.</param>
/// <param name="Serial">Serial number of the engine, when known.</param>
/// <param name="With">Neighbours that will really be there instead of what the maker fitted: position → part, or null for nothing there.</param>
public sealed record FitQuestion(
    string Variant, string Position, Part? Part, BuildDate? Built = null, long? Serial = null, IReadOnlyDictionary<string, Part?>? With = null);

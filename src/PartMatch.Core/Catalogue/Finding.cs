namespace PartMatch.Core.Catalogue;

/// <summary>What one source says of one axis of one question: does this part mount here, or does the engine run the same with it?</summary>
/// <param name="Part">The part tried, or <see cref="Catalogue.Part.None"/> for the position left empty.</param>
/// <param name="Variant">The engine it was tried on.</param>
/// <param name="Outcome">One of those its axis has: see <see cref="FindingOutcome"/>.</param>
/// <param name="Span">The engines it was tried on; open where the source does not say.</param>
/// <param name="With">The neighbours that were there instead of the maker's: position → part, or null for nothing there. Empty = as built.</param>
public sealed record Finding(
    string Code,
    string Part,
    string Variant,
    string Position,
    Axis Axis,
    FindingOutcome Outcome,
    Span Span,
    IReadOnlyDictionary<string, string?> With,
    Evidence Evidence,
    string? Note);

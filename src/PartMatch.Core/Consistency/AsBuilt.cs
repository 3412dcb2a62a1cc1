using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>The engines of one variant as the maker built them, stretch by stretch: on each, the same parts are fitted at the positions looked at.</summary>
internal sealed class AsBuilt
{
    private readonly FamilyFacts _facts;
    private readonly Variant _variant;
    private readonly string[] _positions;

    public AsBuilt(FamilyFacts facts, Variant variant, params IEnumerable<string> positions)
    {
        (_facts, _variant, _positions) = (facts, variant, [.. positions.Distinct(StringComparer.Ordinal)]);
        Stretches = EngineSpans.Cut(variant.Span, built: null, serial: null, [.. Spans]).Stretches;
    }

    public IReadOnlyList<EngineSpan> Stretches { get; }

    private IEnumerable<Span> Spans => _positions.SelectMany(position => _facts.FitmentsAt(_variant.Code, position)).Select(fitment => fitment.Span);

    /// <summary>Valid together: alternatives. Empty where nothing is recorded of that stretch.</summary>
    public IReadOnlyList<Fitment> FittedAt(string position, EngineSpan stretch) =>
        [.. _facts.FitmentsAt(_variant.Code, position).Where(fitment => stretch.IsIn(fitment.Span))];

    /// <summary>The parts of them, without those that say that nothing is there.</summary>
    public IReadOnlyList<Part> PartsAt(string position, EngineSpan stretch) =>
        [.. FittedAt(position, stretch).Select(fitment => fitment.Part).OfType<string>().Distinct(StringComparer.Ordinal).Select(_facts.GetPart)];

    /// <summary>The fit question about what is fitted itself, for the first engines that have it.</summary>
    public string? QuestionAbout(Fitment fitment) =>
        Stretches.FirstOrDefault(stretch => stretch.IsIn(fitment.Span)) is { } stretch ? Question(fitment.Position, fitment.Part ?? Part.None, stretch) : null;

    /// <summary>The fit question about a fitted part itself, for an engine of that stretch.</summary>
    public string Question(string position, string part, EngineSpan stretch)
    {
        Span[] spans = [.. Spans.Where(stretch.IsIn)];
        var byDate = Spans.Any(span => (span.BuiltFrom ?? span.BuiltTo) is not null);
        var bySerial = Spans.Any(span => (span.SerialFrom ?? span.SerialTo) is not null);

        // The first stretch begins where nothing is known to begin: its last day and number are as good.
        var built = stretch.Built > DateOnly.MinValue ? stretch.Built : spans.Min(span => span.BuiltTo?.Last);
        var serial = stretch.Serial > 0 ? stretch.Serial : spans.Min(span => span.SerialTo);
        return new Permalink("/api/fit").With("family", _facts.Family.Code).With("variant", _variant.Code).With("position", position).With("part", part)
            .With("built", byDate ? built?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : null)
            .With("serial", bySerial ? serial : null).ToString();
    }
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Variants;

namespace PartMatch.Core.Parts;

/// <summary>Puts what is recorded of a part into the words and units of an answer.</summary>
public static class PartDescriber
{
    public static PartDescription Describe(PartRecord record)
    {
        var (part, kind) = (record.Part, record.Kind);
        var recorded = part.Values.ToLookup(value => value.Feature, StringComparer.Ordinal);
        return new PartDescription(
            part.Id, part.Maker, record.MakerName, part.Number, part.Key, kind.Code, kind.Name, part.Name, part.Note, record.Book, SourceShown.Of(part.Evidence),
            [.. kind.Features.Where(feature => recorded.Contains(feature.Code)).Select(feature => ValueOf(part, feature, recorded[feature.Code]))],
            [.. kind.Features.Where(feature => !recorded.Contains(feature.Code) && part.Curves.All(point => point.Curve != feature.Code)).Select(feature => feature.Code)],
            [.. part.Curves.GroupBy(point => point.Curve, StringComparer.Ordinal).OrderBy(curve => curve.Key, StringComparer.Ordinal).Select(CurveOf)],
            [.. record.Numbers.Select(number => new DescribedNumber(number.Maker, number.Written, number.Sort))],
            [.. record.Fitments.Select(PlaceOf)],
            [.. record.ReplacedBy.Select(link => ReplacementOf(link, link.NewPart))],
            [.. record.Replaces.Select(link => ReplacementOf(link, link.OldPart))],
            record.Holds, record.HeldIn, Cautions.Of(kind.Cautions));
    }

    private static DescribedValue ValueOf(Part part, Feature feature, IEnumerable<RecordedValue> recorded)
    {
        var known = ValueSelection.Of(part, feature.Code);
        return new DescribedValue(feature.Code, feature.Name, FitWording.Shown(known), known is DisputedValue, [.. recorded.Select(ReadingOf)]);
    }

    private static DescribedReading ReadingOf(RecordedValue value) => value.Reading switch
    {
        QuantityReading quantity => new DescribedReading(
            quantity.Text, Shown(quantity.Value, quantity.Unit, quantity.Text), quantity.Minus, quantity.Plus, quantity.Uncertainty, SourceShown.Of(value.Evidence)),
        var reading => new DescribedReading(reading.Text, null, null, null, null, SourceShown.Of(value.Evidence)),
    };

    private static DescribedCurve CurveOf(IGrouping<string, CurvePoint> curve) => new(
        curve.Key,
        [
            .. curve.OrderBy(point => point.X).ThenBy(point => point.Y).Select(point => new DescribedPoint(
                Shown(point.X, point.XUnit), point is { Y: { } y, YUnit: { } yUnit } ? Shown(y, yUnit) : null, Shown(point.Value, point.Unit), point.Evidence?.Code)),
        ]);

    private static Quantity Shown(decimal inBase, Unit unit, string? text = null) =>
        new(inBase, UnitTable.BaseOf(unit.Dimension).Symbol, text ?? FitWording.Number(inBase, unit));

    private static PlaceFitted PlaceOf(PartFitment place) => new(
        place.Family, place.Fitment.Variant, place.Fitment.Position, place.PositionName, place.Fitment.Quantity,
        BuiltSpan.Of(place.Fitment.Span), SerialSpan.Of(place.Fitment.Span), place.Fitment.Span.Mark);

    private static Replacement ReplacementOf(Supersession link, string other) => new(
        other, link.Way, link.Quantity, link.With, link.Variants, BuiltSpan.Of(link.Span), SerialSpan.Of(link.Span), link.Note, SourceShown.Of(link.Evidence));
}

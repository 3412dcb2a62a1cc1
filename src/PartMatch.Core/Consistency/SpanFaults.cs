using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Spans at one position of one variant that overlap in part, or leave engines out between them.</summary>
/// <remarks>
/// Equal spans are alternatives and no fault. Of two spans one of which lies inside the other, one end may have been forgotten: that is told as well.
/// A span by serial number and one by build date are not compared: which numbers were built when is not recorded.
/// </remarks>
internal static class SpanFaults
{
    public static IEnumerable<Fault> Find(FamilyFacts facts) =>
        from variant in facts.Variants
        from position in facts.Positions
        let fitted = facts.FitmentsAt(variant.Code, position.Code).ToList()
        where fitted.Count > 0
        let built = new AsBuilt(facts, variant, position.Code)
        from fault in Overlaps(facts, variant, position, fitted, built).Concat(Gaps(facts, variant, position, fitted, built))
        select fault;

    private static IEnumerable<Fault> Overlaps(FamilyFacts facts, Variant variant, Position position, List<Fitment> fitted, AsBuilt built)
    {
        var rows = new FaultRows(facts);
        foreach (var (index, one) in fitted.Index())
        {
            foreach (var other in fitted.Skip(index + 1).Where(other => other.Part != one.Part && ShareAnAxis(one.Span, other.Span)))
            {
                EngineSpan[] both = [.. built.Stretches.Where(stretch => stretch.IsIn(one.Span) && stretch.IsIn(other.Span))];
                var oneAlone = built.Stretches.Any(stretch => stretch.IsIn(one.Span) && !stretch.IsIn(other.Span));
                var otherAlone = built.Stretches.Any(stretch => !stretch.IsIn(one.Span) && stretch.IsIn(other.Span));
                if (both.Length == 0 || (!oneAlone && !otherAlone))
                {
                    continue;
                }

                var how = oneAlone && otherAlone ? "overlap in part" : "lie one inside the other";
                yield return new Fault(
                    FaultSort.SpansOverlap, $"{position.Name} on {variant.Code}: the spans of {Name(one)} and {Name(other)} {how}",
                    $"{Name(one)}{Limits(one.Span)}; {Name(other)}{Limits(other.Span)}. They {how}: {FitWording.List(both.Select(stretch => stretch.Text))}, "
                        + "both count as fitted, and an answer takes the better of the two.",
                    position.Code, [variant.Code], [rows.Of(one), rows.Of(other)], built.Question(position.Code, one.Part ?? Part.None, both[0]),
                    "Where the maker went from one to the other, end the older span where the newer begins. "
                        + "Where it fitted either for a while, nothing is wrong: write the time of both as a span of its own.");
            }
        }
    }

    private static IEnumerable<Fault> Gaps(FamilyFacts facts, Variant variant, Position position, List<Fitment> fitted, AsBuilt built)
    {
        // Cut both by date and by number, engines are surely left out only where a date is bare whatever the number, or a number whatever the date.
        bool IsBare(EngineSpan stretch) => built.FittedAt(position.Code, stretch).Count == 0;
        string[] left =
        [
            .. built.Stretches.GroupBy(stretch => stretch.Built).Where(day => day.All(IsBare) && IsBetween(day.Key)).Select(day => day.First().Text),
            .. built.Stretches.GroupBy(stretch => stretch.Serial).Where(number => number.All(IsBare) && IsNumbered(number.Key))
                .Select(number => number.First().Text),
        ];
        if (left.Length > 0)
        {
            yield return new Fault(
                FaultSort.SpansGap, $"{position.Name} on {variant.Code}: engines between the spans have nothing recorded",
                $"What is recorded: {string.Join("; ", fitted.Select(fitment => Name(fitment) + Limits(fitment.Span)))}. "
                    + $"Nothing is recorded for {string.Join("; ", left.Distinct())}.",
                position.Code, [variant.Code], [.. fitted.Select(new FaultRows(facts).Of)], null,
                "Look up where the maker changed over, and let one span begin where the other ends; or record what those engines have.");
        }

        // Before the first bound and after the last, engines are missing only as far as the variant is known to have been built.
        bool IsBetween(DateOnly day) => fitted.Any(fitment => fitment.Span.BuiltFrom is not null || fitment.Span.BuiltTo is not null)
            && (variant.Span.BuiltFrom is not null || fitted.Any(fitment => fitment.Span.BuiltTo?.Last < day || fitment.Span.BuiltFrom?.First < day))
            && (variant.Span.BuiltTo is not null || fitted.Any(fitment => fitment.Span.BuiltFrom?.First > day));
        bool IsNumbered(long serial) => fitted.Any(fitment => fitment.Span.SerialFrom is not null || fitment.Span.SerialTo is not null)
            && (variant.Span.SerialFrom is not null || fitted.Any(fitment => fitment.Span.SerialTo < serial || fitment.Span.SerialFrom < serial))
            && (variant.Span.SerialTo is not null || fitted.Any(fitment => fitment.Span.SerialFrom > serial));
    }

    private static bool ShareAnAxis(Span one, Span other) =>
        (HasDates(one) && (HasDates(other) || !HasNumbers(other))) || (HasNumbers(one) && (HasNumbers(other) || !HasDates(other)))
        || (!HasDates(one) && !HasNumbers(one));

    private static bool HasDates(Span span) => span.BuiltFrom is not null || span.BuiltTo is not null;

    private static bool HasNumbers(Span span) => span.SerialFrom is not null || span.SerialTo is not null;

    private static string Name(Fitment fitment) => fitment.Part ?? "nothing";

    private static string Limits(Span span) => FaultWords.Limits(span) is { Length: > 0 } limits ? limits : ", every engine";
}

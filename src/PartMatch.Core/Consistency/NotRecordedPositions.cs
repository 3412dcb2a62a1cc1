using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Consistency;

/// <summary>Positions of a variant of which nothing is recorded; that nothing is fitted there would be recorded as <c>none</c>.</summary>
internal static class NotRecordedPositions
{
    public static IEnumerable<Fault> Find(FamilyFacts facts, OpenQuestions open) =>
        from variant in facts.Variants
        from position in facts.Positions
        where !facts.FitmentsAt(variant.Code, position.Code).Any()
        select Fault(facts, variant, position, open.HangingOn(new LacksFitment(variant.Code, position.Code)));

    private static Fault Fault(FamilyFacts facts, Variant variant, Position position, OpenQuestions.Hangs hangs)
    {
        var rows = new FaultRows(facts);
        Fitment[] retracted = [.. facts.Fitments.Where(fitment => fitment.Variant == variant.Code && fitment.Position == position.Code)];
        var access = position switch
        {
            { AccessMinutes: 0 } => " It is seen from outside.",
            { AccessMinutes: { } minutes, Access: { } way } => $" On a complete engine it is seen after {FaultWords.Minutes(minutes)}: {way}.",
            { AccessMinutes: { } minutes } => $" On a complete engine it is seen after {FaultWords.Minutes(minutes)}.",
            _ => "",
        };
        var says = retracted.Length > 0 ? "What was recorded rests on retracted evidence and does not count" : "No fitment is recorded";
        return new Fault(
            FaultSort.NotRecorded, $"{position.Name} on {variant.Code}: what the maker fitted is not recorded",
            $"{says}. {FaultWords.Hangs(hangs.Unlocks)}",
            position.Code, [variant.Code], [rows.Of(position), .. retracted.Select(rows.Of)], hangs.Fit,
            $"Look it up, or read the number off an engine, and record the fitment; where nothing is fitted, record {Part.None}.{access}")
        {
            Unlocks = hangs.Unlocks,
        };
    }
}

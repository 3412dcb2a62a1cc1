using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Explicit needs that the part which the maker fitted there does not meet.</summary>
internal static class FittedPartFaults
{
    public static IEnumerable<Fault> Find(FamilyFacts facts) =>
        from need in facts.Needs
        from fitment in facts.FitmentsAt(need.Variant, need.Position).DistinctBy(fitment => fitment.Part)
        let part = fitment.Part is { } id ? facts.GetPart(id) : Part.Nothing(facts.FindPosition(need.Position)?.Kind ?? "")
        let unmet = FindUnmet(facts, need, part)
        where unmet is not null
        select Fault(facts, need, fitment, part, unmet);

    private static Reason? FindUnmet(FamilyFacts facts, Need need, Part part)
    {
        var question = new FitQuestion(need.Variant, need.Position, part);
        return facts.FindKind(part.Kind) is not { } kind ? null : DemandReasons
            .Judge(facts, question, part, kind, part.IsNothing ? null : part, part.IsNothing, replaced: new HashSet<(string, Effect)>())
            .FirstOrDefault(reason => reason.Met == Met.No && reason.Need?.From == "need" && reason.Feature == need.Feature && reason.Effect == need.Effect);
    }

    private static Fault Fault(FamilyFacts facts, Need need, Fitment fitment, Part part, Reason unmet)
    {
        var rows = new FaultRows(facts);
        var place = $"{FaultWords.PlaceName(facts, need.Position)} on {need.Variant}";
        var built = facts.FindVariant(need.Variant) is { } variant ? new AsBuilt(facts, variant, need.Position) : null;
        return new Fault(
            FaultSort.FittedPartContradicts,
            $"{place}: what the maker fitted does not meet the need for {FaultWords.FeatureName(facts, need.Position, need.Feature)}",
            $"{FitWording.AsSentence(unmet.Text)} Yet {(part.IsNothing ? "the maker fitted nothing there" : $"{part.Number} is what the maker fitted")}.",
            need.Position, [need.Variant], [rows.Of(need), .. rows.Of(part, need.Feature), rows.Of(fitment)],
            built?.QuestionAbout(fitment),
            "The need, the value or the fitment is wrong: look at the sources again and correct the row.")
        {
            Consequence = unmet.Consequence,
        };
    }
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Explicit needs that the part which the maker fitted there does not meet.</summary>
internal static class FittedPartFaults
{
    public static IEnumerable<Fault> Find(FamilyFacts facts)
    {
        var rows = new FaultRows(facts);
        foreach (var (variant, code) in facts.Needs.Select(need => (need.Variant, need.Position)).Distinct())
        {
            if (facts.FindPosition(code) is not { } position || facts.FindKind(position.Kind) is not { } kind)
            {
                continue;
            }

            foreach (var fitment in facts.FitmentsAt(variant, code).DistinctBy(fitment => fitment.Part))
            {
                var part = fitment.Part is { } id ? facts.GetPart(id) : Part.Nothing(kind.Code);
                var question = new FitQuestion(variant, code, part);
                var unmet = DemandReasons.Judge(facts, question, part, kind, part.IsNothing ? null : part, part.IsNothing, replaced: new HashSet<(string, Effect)>())
                    .Where(reason => reason.Met == Met.No && reason.Need?.From == "need");
                foreach (var reason in unmet)
                {
                    var need = facts.Needs.First(need => need.Variant == variant && need.Position == code && need.Feature == reason.Feature && need.Effect == reason.Effect);
                    yield return new Fault(
                        FaultSort.FittedPartContradicts,
                        $"{position.Name} on {variant}: what the maker fitted does not meet the need for {FaultWords.FeatureName(kind, need.Feature)}",
                        $"{FitWording.AsSentence(reason.Text)} Yet {(part.IsNothing ? "the maker fitted nothing there" : $"{part.Number} is what the maker fitted")}.",
                        code, [variant], [rows.Of(need), .. rows.Of(part, need.Feature), rows.Of(fitment)],
                        new AsBuilt(facts, facts.FindVariant(variant)!, code).QuestionAbout(fitment), // needs and fitments name variants of the family
                        "The need, the value or the fitment is wrong: look at the sources again and correct the row.")
                    {
                        Consequence = reason.Consequence,
                    };
                }
            }
        }
    }
}

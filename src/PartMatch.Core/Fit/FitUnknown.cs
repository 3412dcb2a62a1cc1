using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>Answers where there is no part to judge: they say so and rule nothing out.</summary>
internal static class FitUnknown
{
    public static FitAnswer Number(FamilyFacts facts, FitQuestion question, Position position) => Nothing(
        facts, question, position, IdentityRelation.UnknownNumber,
        $"The number {question.Number ?? "asked about"} is in no book here. A number that is not recorded is neither right nor wrong: "
        + "compare it with the nearest known numbers, and look at the part.");

    public static FitAnswer NotRecorded(FamilyFacts facts, FitQuestion question, Position position, string from) => Nothing(
        facts, question, position, IdentityRelation.AnotherPart, $"What {from} has at {position.Name} is not recorded.");

    private static FitAnswer Nothing(FamilyFacts facts, FitQuestion question, Position position, IdentityRelation relation, string text)
    {
        var kind = facts.GetKind(position.Kind);
        string[] fitted =
        [
            .. facts.FitmentsAt(question.Variant, position.Code).Select(fitment => fitment.Part).OfType<string>().Distinct(StringComparer.Ordinal),
        ];
        var mounts = new AxisAnswer<Mounts>(Mounts.NotKnown, [Mounts.Yes, Mounts.WithWork, Mounts.No], Disputed: false, [], null, Sureness.Unproven);
        var runs = new AxisAnswer<Runs>(Runs.NotKnown, [Runs.Same, Runs.Differently], Disputed: false, [], null, Sureness.Unproven);
        Reason[] reasons =
        [
            new Reason("r1", ReasonBy.Identity, Axis.Mounts, Met.NotKnown, text),
            new Reason("r2", ReasonBy.Identity, Axis.Runs, Met.NotKnown, text),
        ];
        return new FitAnswer
        {
            Asked = question.AsAsked(facts.Family.Code),
            Headline = Headline.NotKnownYet,
            HeadlineText = FitWording.Of(Headline.NotKnownYet),
            Reference = FitAssembly.Reference(question),
            Sureness = Sureness.Unproven,
            Consequence = null,
            Mounts = mounts,
            Runs = runs,
            Identity = new IdentityAnswer(relation, fitted, []),
            Reasons = reasons,
            NotCompared = FitAssembly.NotCompared(kind, reasons),
            Cautions = Cautions.Of(kind.Cautions),
        };
    }
}

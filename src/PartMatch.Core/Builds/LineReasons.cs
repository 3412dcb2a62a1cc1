using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;
using PartMatch.Core.Openings;

namespace PartMatch.Core.Builds;

/// <summary>Why a line is as it is, in one sentence.</summary>
internal static class LineReasons
{
    /// <param name="donors">What the donor has there; null where it has nothing that could stay.</param>
    public static string Because(PlanRun run, SolvedPlan solved, OpenedPlan opened, JudgedLine line, Candidate? donors)
    {
        var terms = run.Terms;
        var at = terms.At(line.Candidate.Position);
        if (line.IsAsBuilt)
        {
            return "It stays, and so does all that it touches: as the donor was built.";
        }

        if (line.Candidate.IsDonors)
        {
            return line.Outcome == LineOutcome.WithWork
                ? $"The donor's own serves once this is done: {string.Join(", ", line.Answer.Works.Select(work => work.Name))}."
                : line.Answer.Identity.Relation == IdentityRelation.FittedHere ? $"The donor's own is what {line.Answer.Reference} has." : "The donor's own serves.";
        }

        if (at.Position.Group == BuildTerms.Services)
        {
            return line.Candidate.IsUsersChoice ? "You chose it." : $"{line.Answer.Reference} has it so.";
        }

        if (donors is null)
        {
            return (at.StateOfDonor, line.Candidate.IsNothing) switch
            {
                (PartState.Damaged, _) => "The donor's own is damaged.",
                (PartState.Missing, _) => "The donor came without it.",
                (_, true) => "Nothing is needed there.",
                _ => $"The donor has none; {line.Answer.Reference} has one.",
            };
        }

        var own = run.Judge(donors, solved.Written.Chosen(solved.Solution), solved.Written.WorksOf(solved.Solution));
        return own.Outcome is LineOutcome.Fails or LineOutcome.NotKnown && Against(own) is { } reason
            ? $"The donor's own does not serve here: {reason}"
            : at.Keep == KeepWish.Renew ? "You asked for a new one."
            : at.Parts.Count > 0 ? "You chose it."
            : opened.WhyRenewed(line.Candidate.Position) is { } renewed ? renewed
            : IsTooSmall(terms, donors) ? $"The donor's own is not enough for your goal of {terms.Build.Goal?.Power} at {terms.Build.Goal?.Speed}."
            : donors.IsGraded ? "Graded: which is right is measured on the parts beside it; the donor's own suit only what the donor has there."
            : "The donor's own would serve; the whole comes out better without it.";
    }

    private static bool IsTooSmall(BuildTerms terms, Candidate donors) => InjectorGoals.Sets(terms, donors.Position)
        && donors.Parts.All(part => InjectorGoals.Size(terms).GetValueOrDefault(part.Id)?.Enough == Enough.No);

    /// <summary>The first thing that speaks against a line, in the words of its fit answer; there the plan's neighbours are the ones asked with.</summary>
    public static string? Against(JudgedLine line) =>
        (line.Answer.AlsoNeeded is [var change, ..] ? change.Text : ReasonAgainst(line)?.Text)
        ?.Replace(", as asked)", ", in this plan)", StringComparison.Ordinal);

    /// <summary>"Mounts but runs differently: the impeller …"; null where it holds.</summary>
    public static string? Say(JudgedLine line) => line.Outcome is LineOutcome.Fails or LineOutcome.NotKnown && Against(line) is { } against
        ? $"{line.Answer.HeadlineText}: {against}"
        : null;

    /// <summary>The first reason that speaks against it; null where a change elsewhere is all that does.</summary>
    public static Reason? ReasonAgainst(JudgedLine line) =>
        line.Answer.Reasons.Where(reason => reason.Met == Met.No && reason.By is not ReasonBy.Identity && (reason.By != ReasonBy.Finding || Counts(line, reason)))
            .Concat(line.Answer.Reasons.Where(reason => reason.Met == Met.NotKnown && reason.By is not (ReasonBy.Identity or ReasonBy.Finding)))
            .OrderBy(reason => Decides(line, reason) ? 0 : 1).FirstOrDefault();

    /// <summary>Some relations only ask for work or alter how it runs; what stops it is named before them.</summary>
    private static bool Decides(JudgedLine line, Reason reason) => line.Answer.Headline switch
    {
        Headline.DoesNotFit => reason is { Axis: Axis.Mounts, Met: Met.No } && (reason.Effect is Effect.Stops or null),
        Headline.MountsButRunsDifferently => reason is { Axis: Axis.Runs, Met: Met.No },
        _ => reason.Met == Met.NotKnown,
    };

    /// <summary>The fit question of the line with the plan's own neighbours, to be asked by hand.</summary>
    public static string LinkOf(PlanRun run, SolvedPlan solved, JudgedLine line)
    {
        var asked = line.Answer.Asked;
        return new Permalink("/api/fit").With("family", asked.Family).With("variant", asked.Variant).With("position", asked.Position)
            .With("part", ItemOf(asked) is null ? asked.Part : null).With("item", ItemOf(asked))
            .With("built", asked.Built).With("serial", asked.Serial).WithEach("with", asked.With.Where(with => !with.Contains("goal:", StringComparison.Ordinal)))
            .ToString();
    }

    /// <summary>Its code: the page asks about items of the family's own book.</summary>
    private static string? ItemOf(FitAsked asked) => asked.Item?.Split('/', 2) is [var book, var code] && book == asked.Family ? code : null;

    private static bool Counts(JudgedLine line, Reason reason) => line.Answer.Findings.Any(found => found.Code == reason.Code && found.Rank is not null);
}

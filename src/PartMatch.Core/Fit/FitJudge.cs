using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>Judges one part against one alternative of what the maker fitted, on one stretch of engines.</summary>
internal static class FitJudge
{
    /// <param name="fitted">The alternative; null where nothing is fitted or nothing is recorded.</param>
    /// <param name="isNothing">Known to carry nothing, as against not recorded.</param>
    /// <param name="allFitted">Every alternative, for the answer to name.</param>
    public static FitAnswer Judge(
        FamilyFacts facts, FitQuestion question, Part part, EngineSpan span, Part? fitted, bool isNothing, IReadOnlyList<string> allFitted)
    {
        var position = facts.FindPosition(question.Position)!; // the caller has checked the question against the family
        var kind = facts.GetKind(position.Kind);
        var neighbours = new Neighbours(facts, question, span);
        var link = (fitted, part.IsNothing) switch
        {
            (null, true) when isNothing => new IdentityCheck.Link(IdentityRelation.FittedHere, [], OutsideLimits: false, []),
            (null, _) or (_, true) => new IdentityCheck.Link(IdentityRelation.AnotherPart, [], OutsideLimits: false, []),
            _ => IdentityCheck.Between(facts, question.Variant, span, fitted.Id, part.Id),
        };

        var isAsBuilt = link.Relation == IdentityRelation.FittedHere && neighbours.AreTheMakers;
        var companions = CompanionClosure.Work(facts, question, part, neighbours, isAsBuilt);
        var reasons = new List<Reason>();
        if (part.Kind == kind.Code)
        {
            reasons.AddRange(DemandReasons.Judge(facts, question, part, kind, fitted, isNothing, JointReasons.Replaced(facts, question, neighbours)));
            reasons.AddRange(part.IsNothing ? [] : JointReasons.Judge(facts, question, part, neighbours));
            reasons.AddRange(part.IsNothing ? [] : StackReasons.Judge(facts, question, part, neighbours));
            reasons.AddRange(KindReasons.Of(kind, part));
            reasons.AddRange(KindReasons.ChosenByMeasurement(facts, question, part, position));
        }
        else
        {
            reasons.Add(KindReasons.AnotherKind(facts, part, position, kind));
        }

        // The maker put the number there beside the maker's neighbours: beside others it says nothing of what mates or adds up with them.
        (Axis Axis, string Position)[] others =
        [
            .. JointReasons.OtherNeighbours(facts, question, neighbours),
            .. StackReasons.OtherNeighbours(facts, question, neighbours),
        ];
        var silenced = others.Select(other => other.Axis).ToHashSet();
        var findings = FindingStatements.Weigh(facts, question, part, span, fitted, neighbours, others);

        reasons.AddRange(companions.Reasons);
        reasons.InsertRange(0, [.. IdentityReasons(facts, question, link, fitted, part), .. findings.Select(FindingStatements.Reason)]);
        reasons = [.. reasons.Index().Select(reason => reason.Item with { Id = $"r{reason.Index + 1}", Text = FitWording.AsSentence(reason.Item.Text) })];

        var possibleMounts = AxisDecision.PossibleMounts(reasons);
        var possibleRuns = part.Kind == kind.Code ? AxisDecision.PossibleRuns(reasons, kind.CanAlterRunning || part.IsNothing) : [Runs.Same, Runs.Differently];

        Statement<Mounts>[] onMounts =
        [
            .. IdentityStatement(link, reasons, Axis.Mounts, silenced, Mounts.Yes),
            .. FindingStatements.On(Axis.Mounts, findings, reasons, FindingStatements.MountsOf),
            .. Computed(question, possibleMounts, reasons, Axis.Mounts, isAsBuilt, MountsDeciders),
        ];
        Statement<Runs>[] onRuns =
        [
            .. IdentityStatement(link, reasons, Axis.Runs, silenced, Runs.Same),
            .. FindingStatements.On(Axis.Runs, findings, reasons, FindingStatements.RunsOf),
            .. Computed(question, possibleRuns, reasons, Axis.Runs, isAsBuilt, RunsDeciders),
        ];
        var (mounts, againstMounts) = AxisDecision.Combine(Axis.Mounts, onMounts, possibleMounts, Mounts.NotKnown);
        var (runs, againstRuns) = AxisDecision.Combine(Axis.Runs, onRuns, possibleRuns, Runs.NotKnown);

        var also = companions.AlsoNeeded.Concat(WithTheNewer(facts, question, link)).ToList();
        return FitAssembly.Assemble(facts, question, new Judgement(
            part, kind, mounts, runs, new IdentityAnswer(link.Relation, allFitted, link.Chain), reasons, [.. againstMounts, .. againstRuns],
            also, companions.PerhapsNeeded, findings));
    }

    private static IEnumerable<Statement<T>> IdentityStatement<T>(
        IdentityCheck.Link link, List<Reason> reasons, Axis axis, IReadOnlySet<Axis> silenced, T value)
        where T : struct, Enum
    {
        if (link.IsIdentity && !silenced.Contains(axis))
        {
            var reason = reasons.First(reason => reason.By == ReasonBy.Identity && reason.Axis == axis);
            yield return new Statement<T>(value, AxisDecision.IdentityRank, [reason.Id], "The maker puts this number there.");
        }
    }

    private static Statement<T>[] Computed<T>(
        FitQuestion question, IReadOnlyList<T> possible, List<Reason> reasons, Axis axis, bool isAsBuilt, Func<T, Reason, bool> decides)
        where T : struct, Enum
    {
        if (possible.Count != 1)
        {
            return [];
        }

        Reason[] deciding =
        [
            .. reasons.Where(reason => reason.Axis == axis && reason.By is not (ReasonBy.Identity or ReasonBy.Finding) && decides(possible[0], reason)),
        ];
        Reason[] unmet = [.. deciding.Where(reason => reason.Met == Met.No)];
        Reason[] solid = [.. unmet.Where(reason => reason.By == ReasonBy.Kind || reason.Grade is EvidenceGrade.Measured or EvidenceGrade.MakersDocument)];

        // What speaks against the maker's own part among the maker's own neighbours is the base contradicting itself, unless it was read on the one
        // example asked about.
        solid = isAsBuilt ? [.. solid.Where(reason => question.IsMeasured(reason.Feature))] : solid;
        var byRecords = solid.Length > 0;
        var shown = byRecords ? solid : deciding;

        // What is known of a number, by identity or by trial, was learned on other examples: of this one its own reading speaks first.
        var isOwnReading = solid.Any(reason => reason.Grade == EvidenceGrade.Measured && question.IsMeasured(reason.Feature));
        var rank = isOwnReading ? AxisDecision.OwnReadingRank : byRecords ? AxisDecision.DecidedByRecordsRank : AxisDecision.UnprovenRank;
        return [new Statement<T>(possible[0], rank, [.. shown.Select(reason => reason.Id)], FitWording.Computed(possible[0]))];
    }

    private static bool MountsDeciders(Mounts value, Reason reason) => value switch
    {
        Mounts.No => reason.Met == Met.No && reason.Effect == Effect.Stops,
        Mounts.WithWork => reason.Met == Met.No && reason.Effect == Effect.Work,
        _ => reason.Met == Met.Yes,
    };

    private static bool RunsDeciders(Runs value, Reason reason) => value == Runs.Differently ? reason.Met == Met.No : reason.Met == Met.Yes;

    private static IEnumerable<Reason> IdentityReasons(FamilyFacts facts, FitQuestion question, IdentityCheck.Link link, Part? fitted, Part part)
    {
        var seen = SeenThere(facts, question, part);
        var text = link.Relation switch
        {
            IdentityRelation.FittedHere when part.IsNothing => $"The maker fits nothing there on {question.Variant}.",
            _ when part.IsNothing => $"Left empty: the maker fitted {fitted?.Number ?? "something not recorded"} there on {question.Variant}; "
                + "what speaks for or against doing without is listed here, and nothing else is recorded.",
            IdentityRelation.FittedHere when seen.Count > 0 =>
                $"{part.Number} is what was found fitted on {question.Variant}; no maker's document says so, and somebody may have put it there.",
            IdentityRelation.FittedHere => $"{part.Number} is what the maker fitted on {question.Variant}.",
            IdentityRelation.NewerNumber => $"{part.Number} is a newer number of {fitted!.Number}, which the maker fitted.", // a link needs a fitted part
            IdentityRelation.SameBothWays => $"{part.Number} and {fitted!.Number}, which the maker fitted, stand in for each other.",
            IdentityRelation.OlderNumber => $"{part.Number} is an older number; the maker does not put it in place of the newer {fitted!.Number}.",
            _ when link.OutsideLimits => $"A supersession links {part.Number} and {fitted!.Number}, "
                + "but not for this variant or not for this engine's build date or serial number.",
            _ => null,
        };
        if (text is null)
        {
            yield break;
        }

        var loop = link.Loop.Count > 0 ? $" Fault in the base: the supersessions run in a loop, {string.Join(" → ", link.Loop)}." : "";
        var met = link.IsIdentity ? Met.Yes : Met.NotKnown;
        var grade = seen.Count > 0 ? seen.Max(source => source.Grade) : EvidenceGrade.MakersDocument;
        yield return new Reason("", ReasonBy.Identity, Axis.Mounts, met, text + loop) { Grade = grade, Cited = seen };
        if (link.IsIdentity)
        {
            yield return new Reason("", ReasonBy.Identity, Axis.Runs, met, text + loop) { Grade = grade, Cited = seen };
        }
    }

    /// <summary>Who saw the part there, where that is all there is: nobody cites the maker for it.</summary>
    private static IReadOnlyList<Evidence> SeenThere(FamilyFacts facts, FitQuestion question, Part part)
    {
        Evidence?[] sources = [.. facts.FitmentsAt(question.Variant, question.Position).Where(fitment => fitment.Part == part.Id).Select(fitment => fitment.Evidence)];
        return sources.All(source => source is { Grade: not EvidenceGrade.MakersDocument }) ? [.. sources.OfType<Evidence>().Distinct()] : [];
    }

    private static IEnumerable<CompanionChange> WithTheNewer(FamilyFacts facts, FitQuestion question, IdentityCheck.Link link)
    {
        if (!link.IsIdentity)
        {
            yield break;
        }

        foreach (var needed in link.Chain.SelectMany(step => step.With).Distinct(StringComparer.Ordinal))
        {
            var part = facts.FindPart(needed);
            var position = facts.Positions.FirstOrDefault(position => position.Kind == part?.Kind)?.Code ?? question.Position;
            var named = $"{needed} ({part?.Name ?? "part"})";
            yield return new CompanionChange(position, named, [], "", [needed], $"The newer number goes on only together with {named}.");
        }
    }
}

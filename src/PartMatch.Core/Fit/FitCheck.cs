using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;

namespace PartMatch.Core.Fit;

/// <summary>Will it fit? The one reasoning behind every fit answer, compare cell and look-alike danger.</summary>
public static class FitCheck
{
    /// <summary>Decides one question.</summary>
    /// <param name="facts">Everything recorded of the family.</param>
    /// <param name="question">Its variant and position must be the family's; its part may be of another family, or of no book at all.</param>
    /// <exception cref="ArgumentException">The variant or the position is not of this family, or the item is claimed to be another part.</exception>
    public static FitAnswer Decide(FamilyFacts facts, FitQuestion question)
    {
        var variant = facts.FindVariant(question.Variant)
            ?? throw new ArgumentException($"{question.Variant} is not a variant of {facts.Family.Code}.", nameof(question));
        var position = PositionOf(facts, question);
        var answer = question.Part is { } part
            ? OverSpans(facts, question, variant, question.Item is { } measured ? MeasuredPart.Of(part, measured) : part)
            : FitUnknown.Number(facts, question, position);
        answer = answer with { Reasons = [.. answer.Reasons, .. OutsideVariant.Reasons(variant, question)] };
        return question.Item is { } item ? WithItem(facts, question, position, answer, item) : answer;
    }

    /// <summary>Does what one variant has at a position fit another variant there?</summary>
    /// <param name="from">The variant the part comes from.</param>
    /// <param name="builtFrom">Build date of the engine it comes from, when known.</param>
    public static FitAnswer DecideFrom(FamilyFacts facts, string from, BuildDate? builtFrom, FitQuestion question)
    {
        Fitment[] fitted =
        [
            .. facts.FitmentsAt(from, question.Position)
                .Where(fitment => builtFrom is null || Overlaps(fitment.Span, builtFrom)),
        ];
        var position = PositionOf(facts, question);
        Part[] parts =
        [
            .. fitted.Select(fitment => fitment.Part).Distinct(StringComparer.Ordinal)
                .Select(part => part is null ? Part.Nothing(position.Kind) : facts.GetPart(part)),
        ];
        var asked = question with { From = from };
        if (parts.Length == 0)
        {
            return FitUnknown.NotRecorded(facts, asked, position, from);
        }

        return AnswerMerge.Over([.. parts.Select(part => ($"with {part.Id}", (string?)null, Decide(facts, asked with { Part = part })))], DependsOn.Donor);
    }

    private static Position PositionOf(FamilyFacts facts, FitQuestion question) => facts.FindPosition(question.Position)
        ?? throw new ArgumentException($"{question.Position} is not a position of {facts.Family.Code}.", nameof(question));

    /// <summary>Can an engine of that build date fall in the span?</summary>
    public static bool Overlaps(Span span, BuildDate built) =>
        (span.BuiltFrom is null || span.BuiltFrom.First <= built.Last) && (span.BuiltTo is null || span.BuiltTo.Last >= built.First);

    /// <summary>A number may fit while this example of it is worn out: the headline says so in one breath.</summary>
    private static FitAnswer WithItem(FamilyFacts facts, FitQuestion question, Position position, FitAnswer answer, Item item)
    {
        var kind = facts.FindKind(question.Part?.Kind ?? "") ?? facts.GetKind(position.Kind);
        var check = ItemCheck.Decide(facts, kind, facts.Limits, question.Part, item, facts.Selects);
        var beyond = check.Limits.Where(limit => limit.Condition == ItemCondition.BeyondLimits).ToList();
        return answer with
        {
            Item = check,
            HeadlineText = answer.HeadlineText + check.Condition switch
            {
                ItemCondition.BeyondLimits => $", but this example is beyond its limit ({FitWording.List(beyond.Select(limit => limit.Name).Distinct())})",
                ItemCondition.NotInspected => "; this example is not inspected in full",
                _ => "; this example is within its recorded limits",
            },
            Consequence = beyond.Select(limit => (Consequence?)limit.Consequence).Append(answer.Consequence).Max(),
        };
    }

    private static FitAnswer OverSpans(FamilyFacts facts, FitQuestion question, Variant variant, Part part)
    {
        var cuts = EngineSpans.Cut(variant.Span, question.Built, question.Serial, SpansThatMatter(facts, question, part));
        var judged = cuts.Stretches.ToDictionary(stretch => (stretch.Built, stretch.Serial), stretch => OnStretch(facts, question, part, stretch));

        // Bounds at which nothing in the answer changes are not worth telling.
        var told = cuts.Without((one, other) => SaysTheSame(facts, question, judged, one, other));

        // A stretch for which nothing is recorded says something only when no other stretch does.
        bool Says(EngineSpan stretch) => IsRecorded(facts, question, stretch) || !cuts.Stretches.Any(other => IsRecorded(facts, question, other));
        FitAnswer On(EngineSpan stretch) => judged[(stretch.Built, stretch.Serial)];
        var answer = AnswerMerge.Over(
            [.. told.Stretches.Where(Says).Select(stretch => (stretch.Text, MarkOf(facts, question, stretch), On(stretch)))], DependsOn.Engine);
        return answer with { Findings = FindingShown.Over(cuts.Stretches.Where(Says).Select(On)) };
    }

    /// <summary>Several fitments valid together are alternatives: judged one by one, never mixing features of two; the best answer is named.</summary>
    private static FitAnswer OnStretch(FamilyFacts facts, FitQuestion question, Part part, EngineSpan stretch)
    {
        Fitment[] fitted =
        [
            .. facts.FitmentsAt(question.Variant, question.Position).Where(fitment => stretch.IsIn(fitment.Span)),
        ];
        string[] parts = [.. fitted.Select(fitment => fitment.Part).OfType<string>().Distinct(StringComparer.Ordinal)];
        if (fitted.Length == 0)
        {
            return FitJudge.Judge(facts, question, part, stretch, null, isNothing: false, []);
        }

        var alternatives = fitted.Select(fitment => fitment.Part).Distinct()
            .Select(alternative => (alternative, answer: FitJudge.Judge(
                facts, question, part, stretch, alternative is null ? null : facts.FindPart(alternative), isNothing: alternative is null, parts)))
            .ToList();
        var best = alternatives.OrderBy(one => one.answer.Headline).ThenByDescending(one => one.answer.Sureness)
            .ThenBy(one => one.alternative, StringComparer.Ordinal).First();
        return alternatives.Count == 1 ? best.answer : best.answer with { JudgedAgainst = best.alternative ?? Part.None };
    }

    private static bool IsRecorded(FamilyFacts facts, FitQuestion question, EngineSpan stretch) =>
        facts.FitmentsAt(question.Variant, question.Position).Any(fitment => stretch.IsIn(fitment.Span));

    private static bool SaysTheSame(
        FamilyFacts facts, FitQuestion question, Dictionary<(DateOnly, long), FitAnswer> judged, EngineSpan one, EngineSpan other)
    {
        var (left, right) = (judged[(one.Built, one.Serial)], judged[(other.Built, other.Serial)]);
        return IsRecorded(facts, question, one) == IsRecorded(facts, question, other)
            && (left.HeadlineText, left.Sureness, left.Identity.Relation) == (right.HeadlineText, right.Sureness, right.Identity.Relation)
            && SaysTheSame(left.Mounts, right.Mounts)
            && SaysTheSame(left.Runs, right.Runs)
            && left.Identity.Fitted.SequenceEqual(right.Identity.Fitted)
            && AnswerMerge.AskTheSame(left, right)
            && Changes(left).SequenceEqual(Changes(right));
    }

    private static bool SaysTheSame<T>(AxisAnswer<T> left, AxisAnswer<T> right)
        where T : struct, Enum =>
        (left.Rank, left.Sureness, left.Disputed) == (right.Rank, right.Sureness, right.Disputed) && left.CouldBe.SequenceEqual(right.CouldBe);

    private static IEnumerable<(string, string, bool)> Changes(FitAnswer answer) =>
    [
        .. answer.AlsoNeeded.Select(change => (change.Position, change.Demand, true)),
        .. answer.PerhapsNeeded.Select(change => (change.Position, change.Demand, false)),
    ];

    private static string? MarkOf(FamilyFacts facts, FitQuestion question, EngineSpan stretch) =>
        facts.FitmentsAt(question.Variant, question.Position).Where(fitment => stretch.IsIn(fitment.Span))
            .Select(fitment => fitment.Span.Mark).FirstOrDefault(mark => mark is not null);

    /// <summary>Spans at this position and at every position its answer can look at, of the supersessions, and of what was found here.</summary>
    internal static List<Span> SpansThatMatter(FamilyFacts facts, FitQuestion question, Part part)
    {
        var positions = CompanionClosure.Reach(facts, question);
        positions.UnionWith(facts.JointsAt(question.Position).SelectMany(joint => new[] { joint.Left.Position, joint.Right.Position }));
        positions.UnionWith(facts.StacksAt(question.Position).SelectMany(stack => stack.Terms).OfType<FeatureTerm>().Select(term => term.At.Position));
        return
        [
            .. positions.SelectMany(position => facts.FitmentsAt(question.Variant, position)).Select(fitment => fitment.Span),
            .. facts.Supersessions.Where(link => link.HoldsFor(question.Variant)).Select(link => link.Span),
            .. facts.FindingsAt(question.Position)
                .Where(finding => finding.Part == part.Id && finding.Variant == question.Variant && !finding.Evidence.IsRetracted)
                .Select(finding => finding.Span),
        ];
    }
}

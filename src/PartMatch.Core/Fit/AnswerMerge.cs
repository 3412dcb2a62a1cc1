using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>What several answers to one question hang on.</summary>
internal enum DependsOn
{
    /// <summary>Build date or serial number of the engine, not given or not given closely enough.</summary>
    Engine,

    /// <summary>Which of several parts the donor really has.</summary>
    Donor,
}

/// <summary>Makes one answer of several that could each be the true one: equal axes stay, differing ones become "not known, depends on …".</summary>
internal static class AnswerMerge
{
    /// <param name="cases">In order; each with the case in words, the visible mark that shows it, and its answer.</param>
    public static FitAnswer Over(IReadOnlyList<(string Case, string? Mark, FitAnswer Answer)> cases, DependsOn on)
    {
        var first = cases[0].Answer;
        if (cases.Count == 1)
        {
            return first;
        }

        var fitted = cases.SelectMany(one => one.Answer.Identity.Fitted).Distinct(StringComparer.Ordinal).ToArray();
        var named = cases.Index().Select(one => Named(one.Index + 1, one.Item.Case, one.Item.Answer)).ToList();
        var mounts = Merge(named.ConvertAll(answer => answer.Mounts), Mounts.NotKnown);
        var runs = Merge(named.ConvertAll(answer => answer.Runs), Runs.NotKnown);
        var (also, perhaps) = Changes(cases);
        MeasureNext[] measureNext = [.. cases.SelectMany(one => one.Answer.MeasureNext).Distinct().OrderBy(next => next.Minutes).ThenBy(next => next.Settles)];
        var findings = FindingShown.Over(cases.Select(one => one.Answer));
        if (mounts is null && runs is null && cases.All(one => AskTheSame(one.Answer, first)) && FindLeastSure(cases) is { } leastSure)
        {
            return leastSure with
            {
                Asked = AskedOver(first, cases, on),
                HeadlineText = FitAssembly.HeadlineText(leastSure.Headline, leastSure.Mounts, leastSure.Runs, also.Length),
                Identity = RelationOver(cases, leastSure, fitted),
                AlsoNeeded = also,
                PerhapsNeeded = perhaps,
                MeasureNext = measureNext,
                Findings = findings,
            };
        }

        var text = on == DependsOn.Engine
            ? $"Depends on the {What(cases)}: read it off the engine. {InWords(cases)}."
            : $"Depends on which part the donor really has. {InWords(cases)}.";
        var mountsAxis = mounts ?? Weakest(named.ConvertAll(answer => answer.Mounts));
        var runsAxis = runs ?? Weakest(named.ConvertAll(answer => answer.Runs));
        Axis[] open = [.. mounts is null ? [] : new[] { Axis.Mounts }, .. runs is null ? [] : new[] { Axis.Runs }];
        Reason[] reasons =
        [
            .. open.Select(axis => new Reason($"depends-on-{axis.ToString().ToLowerInvariant()}", ReasonBy.Identity, axis, Met.NotKnown, text)),
            .. named.SelectMany(answer => answer.Reasons),
        ];
        var headline = AxisDecision.HeadlineOf(mountsAxis.Value, runsAxis.Value);
        return first with
        {
            Asked = AskedOver(first, cases, on),
            Headline = headline,
            HeadlineText = FitAssembly.HeadlineText(headline, mountsAxis, runsAxis, also.Length),
            Sureness = AxisDecision.SurenessOf(headline, mountsAxis.Sureness, runsAxis.Sureness),
            Consequence = cases.Max(one => one.Answer.Consequence),
            Mounts = mountsAxis,
            Runs = runsAxis,
            Identity = RelationOver(cases, first, fitted),
            Reasons = reasons,
            Disagreements = [.. named.SelectMany(answer => answer.Disagreements).DistinctBy(one => (one.Axis, one.Says, one.Text))],
            AlsoNeeded = also,
            PerhapsNeeded = perhaps,
            Works = Works(named),
            MeasureNext = measureNext,
            Findings = findings,
            Cautions = Cautions.Of(cases.SelectMany(one => one.Answer.Cautions).Select(caution => caution.Code)),
            Spans = open.Length == 0 ? [] : [.. cases.Select(one => new SpanAnswer(one.Case, one.Mark, one.Answer.Headline, one.Answer.Identity.Fitted))],
        };
    }

    /// <summary>Do both answers ask for the same works, warn of the same and come to the same where they are not heeded?</summary>
    public static bool AskTheSame(FitAnswer one, FitAnswer other) =>
        one.Consequence == other.Consequence && one.Cautions.SequenceEqual(other.Cautions)
        && one.Works.Select(work => work.Work).SequenceEqual(other.Works.Select(work => work.Work));

    /// <summary>Each work once, with its reasons in every case, ordered by code.</summary>
    private static WorkNeeded[] Works(IReadOnlyList<FitAnswer> named) =>
    [
        .. named.SelectMany(answer => answer.Works).GroupBy(work => work.Work, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => group.First() with { Reasons = [.. group.SelectMany(work => work.Reasons)] }),
    ];

    /// <summary>The case that is the least sure on both axes; null where no single case is.</summary>
    private static FitAnswer? FindLeastSure(IReadOnlyList<(string Case, string? Mark, FitAnswer Answer)> cases)
    {
        var (mounts, runs) = (cases.Min(one => one.Answer.Mounts.Sureness), cases.Min(one => one.Answer.Runs.Sureness));
        return cases.Select(one => one.Answer).Where(answer => answer.Mounts.Sureness == mounts && answer.Runs.Sureness == runs)
            .OrderByDescending(answer => answer.Mounts.Rank).ThenByDescending(answer => answer.Runs.Rank).FirstOrDefault();
    }

    /// <summary>What every case needs is needed; what only some need is perhaps needed.</summary>
    private static (CompanionChange[] Also, CompanionChange[] Perhaps) Changes(IReadOnlyList<(string Case, string? Mark, FitAnswer Answer)> cases)
    {
        bool IsIn(CompanionChange change, IEnumerable<CompanionChange> changes) => changes.Any(other => Key(other) == Key(change));
        var all = cases.SelectMany(one => one.Answer.AlsoNeeded).DistinctBy(Key).ToLookup(change => cases.All(one => IsIn(change, one.Answer.AlsoNeeded)));
        var perhaps = all[false].Concat(cases.SelectMany(one => one.Answer.PerhapsNeeded)).DistinctBy(Key);
        return ([.. all[true]], [.. perhaps.Where(change => !IsIn(change, all[true]))]);
    }

    private static (string, string) Key(CompanionChange change) => (change.Position, change.Demand);

    /// <summary>Where the donor may have one of several parts, no single one was asked about.</summary>
    private static FitAsked AskedOver(FitAnswer first, IReadOnlyList<(string Case, string? Mark, FitAnswer Answer)> cases, DependsOn on) =>
        on == DependsOn.Donor && cases.Any(one => one.Answer.Asked.Part != first.Asked.Part) ? first.Asked with { Part = null } : first.Asked;

    /// <summary>A mark that every case carries shows the change as such: it is told once.</summary>
    private static string InWords(IReadOnlyList<(string Case, string? Mark, FitAnswer Answer)> cases)
    {
        var shared = cases.Select(one => one.Mark).Distinct().Count() == 1 ? cases[0].Mark : null;
        string Mark(string? mark) => mark is null || shared is not null ? "" : $" ({mark})";
        var each = cases.Select(one => $"{one.Case}{Mark(one.Mark)}: {FitWording.Of(one.Answer.Headline).ToLowerInvariant()}");
        return $"{string.Join("; ", each)}{(shared is null ? "" : $". What shows the change: {shared}")}";
    }

    private static string What(IReadOnlyList<(string Case, string? Mark, FitAnswer Answer)> cases) =>
        (cases.Any(one => one.Case.Contains("serial", StringComparison.Ordinal)), cases.Any(one => one.Case.Contains("built", StringComparison.Ordinal))) switch
        {
            (true, true) => "serial number and build date",
            (false, true) => "build date",
            _ => "serial number",
        };

    /// <summary>The relation all cases share; otherwise the closest, with the cases told in the spans.</summary>
    private static IdentityAnswer RelationOver(IReadOnlyList<(string Case, string? Mark, FitAnswer Answer)> cases, FitAnswer first, string[] fitted)
    {
        var relations = cases.Select(one => one.Answer.Identity.Relation).Distinct().ToList();
        return relations.Count == 1
            ? first.Identity with { Fitted = fitted }
            : cases.First(one => one.Answer.Identity.Relation == relations.Min()).Answer.Identity with { Fitted = fitted };
    }

    /// <summary>The answer of one case with reason ids that stay unique when the cases stand side by side.</summary>
    private static FitAnswer Named(int number, string words, FitAnswer answer)
    {
        string Id(string id) => $"s{number}{id}";
        return answer with
        {
            Reasons = [.. answer.Reasons.Select(reason => reason with { Id = Id(reason.Id), Text = $"[{words}] {reason.Text}" })],
            Mounts = answer.Mounts with { DecidedBy = [.. answer.Mounts.DecidedBy.Select(Id)] },
            Runs = answer.Runs with { DecidedBy = [.. answer.Runs.DecidedBy.Select(Id)] },
            Works = [.. answer.Works.Select(work => work with { Reasons = [.. work.Reasons.Select(Id)] })],
            Disagreements = [.. answer.Disagreements.Select(one => one with { Reasons = [.. one.Reasons.Select(Id)] })],
        };
    }

    /// <summary>Null when every case says the same; else not known, with all that could be.</summary>
    private static AxisAnswer<T>? Merge<T>(List<AxisAnswer<T>> all, T notKnown)
        where T : struct, Enum
    {
        T[] couldBe = [.. all.SelectMany(axis => axis.CouldBe).Distinct().Order()];
        return all.TrueForAll(axis => axis.Value.Equals(all[0].Value) && axis.CouldBe.SequenceEqual(all[0].CouldBe))
            ? null
            : new AxisAnswer<T>(
                notKnown, couldBe, all.Exists(axis => axis.Disputed), [$"depends-on-{(typeof(T) == typeof(Mounts) ? "mounts" : "runs")}"], null,
                Sureness.Unproven);
    }

    private static AxisAnswer<T> Weakest<T>(List<AxisAnswer<T>> axes)
        where T : struct, Enum => axes.OrderBy(axis => axis.Sureness).ThenByDescending(axis => axis.Rank).First();
}

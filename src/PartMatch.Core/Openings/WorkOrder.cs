using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Openings;

/// <summary>The order of work of a plan.</summary>
internal sealed class WorkOrder
{
    /// <summary>Positions of this group are spread or poured: they stand beside the steps, and only what is drained and filled is a step.</summary>
    public const string Consumables = "consumables";

    private static readonly string[] _saysNothing =
    [
        "It orders what the books record, and is no manual: where a maker's document says otherwise, that counts.",
        "What no book records of a joint is not here: look at it before it is closed.",
        "It names no torque that no source states, and says of no clearance that it is safe.",
    ];

    private readonly PlanRun _run;
    private readonly SolvedPlan _solved;
    private readonly BuildPlan _plan;
    private readonly OpenedPlan _opened;
    private readonly StepFacts _facts;
    private readonly StepReminders _reminders;

    private WorkOrder(PlanRun run, SolvedPlan solved, BuildPlan plan)
    {
        (_run, _solved, _plan) = (run, solved, plan);
        _opened = OpenedPlan.Of(run.Terms, solved.Written.Chosen(solved.Solution), solved.Written.WorksOf(solved.Solution));
        (_facts, _reminders) = (new StepFacts(run, solved, plan, _opened), new StepReminders(run.Terms.Facts.Family, _opened));
    }

    private BuildTerms Terms => _run.Terms;

    private FamilyFacts Family => Terms.Facts.Family;

    /// <param name="plan">The solved plan in words.</param>
    public static BuildWorkOrder Of(PlanRun run, SolvedPlan solved, BuildPlan plan) => solved.Solution.Choices.Count == 0
        ? new BuildWorkOrder(plan.Asked, plan.Status, plan.HeadlineText)
        : new WorkOrder(run, solved, plan).Write();

    private BuildWorkOrder Write()
    {
        var chosen = _solved.Written.Chosen(_solved.Solution);
        string[] off = [.. Steps().Where(position => OpenedPlan.IsThere(Terms, position))];
        string[] on = [.. Steps().Where(position => chosen.TryGetValue(position, out var there) && !there.IsNothing)];
        WorkStep[] apart = [.. StepOrder.Of(Family, Terms.Build.Donor.Variant, off).Select(position => Off(position, off))];
        string[] together = [.. StepOrder.Of(Family, Terms.Target, on).Reverse()];
        WorkStep[] fitted = [.. together.Where(position => !IsFilled(position)).Select(position => On(position, on))];
        WorkStep[] filled = [.. together.Where(IsFilled).Order(StringComparer.Ordinal).Select(position => _facts.Filled(position))];
        return new BuildWorkOrder(_plan.Asked, _plan.Status, Headline(apart, fitted))
        {
            TakeApart = Numbered(apart, 1),
            Works = _plan.Works,
            PutTogether = Numbered(fitted, apart.Length + 1),
            BeforeStart = _reminders.BeforeStart([.. fitted.Concat(filled).Select(step => step.Position)]),
            Fill = Numbered(filled, apart.Length + fitted.Length + 1),
            Cautions = Cautions.Of(
                apart.Concat(fitted).Concat(filled).SelectMany(step => step.Cautions).Concat(_plan.Cautions.Select(caution => caution.Code))),
            SaysNothing = _saysNothing,
        };
    }

    /// <summary>What is disturbed and is a step: by groups, so that neighbours come off together where the openings leave it free.</summary>
    private IEnumerable<string> Steps()
    {
        var groups = Family.Positions.Select(position => position.Group).Distinct(StringComparer.Ordinal).ToList();
        return Family.Positions.Where(position => _opened.Disturbed.ContainsKey(position.Code) && (position.Group != Consumables || IsFilled(position.Code)))
            .OrderBy(position => position.Group == Consumables ? -1 : groups.IndexOf(position.Group)).ThenBy(position => position.Code, StringComparer.Ordinal)
            .Select(position => position.Code);
    }

    /// <summary>A consumable that has to be out before something comes off: it is drained and filled.</summary>
    private bool IsFilled(string position) => Family.FindPosition(position)?.Group == Consumables
        && Disturbance.Rows(Family, OpenedPlan.Engines(Terms)).Any(row => row.OffFirst == position);

    private WorkStep Off(string position, string[] off)
    {
        var verb = IsFilled(position) ? "Drain" : "Take off";
        var donor = Terms.Build.Donor.Variant;
        return new WorkStep(
            0, position, _opened.NameOf(position), OnBench(donor, position, off, "from") + $"{verb}: {_opened.NameOf(position)}", _facts.Why(position),
            _opened.Disturbed[position].Chain,
            [.. StepOrder.First(Family, donor, off)[position].Order(StringComparer.Ordinal)])
        {
            Works = _facts.WorksOff(position),
            Reminders = _reminders.At(position, ReminderAt.TakenOff),
            Cautions = _facts.CautionsAt(position, donor),
        };
    }

    private WorkStep On(string position, string[] on)
    {
        var step = _facts.On(position, After(position, on), _plan.Works);
        return step with
        {
            Text = OnBench(Terms.Target, position, on, "with") + step.Text,
            NotRecorded = step.Tightening.Count > 0 ? [] : _reminders.Untold(position),
            Reminders = [.. _reminders.Worked(position, _facts.WorksOn(position)), .. _reminders.At(position, ReminderAt.PutOn)],
        };
    }

    /// <summary>"On the bench, with Connecting rods. " where it is joined to that before that goes in; else nothing.</summary>
    private string OnBench(string variant, string position, string[] steps, string with)
    {
        string[] joined =
        [
            .. StepOrder.Bench(Family, variant).Where(row => row.How == BenchJoin.OnBench && row.First == position && steps.Contains(row.Then))
                .Select(row => _opened.NameOf(row.Then)).Distinct(StringComparer.Ordinal),
        ];
        return joined.Length == 0 ? "" : $"On the bench, {with} {FitWording.List(joined)}. ";
    }

    /// <summary>What has to be on before this: all that can be reached only with this off, and what goes in before it.</summary>
    private string[] After(string position, string[] on) =>
        [.. StepOrder.First(Family, Terms.Target, on).Where(row => row.Contains(position)).Select(row => row.Key).Order(StringComparer.Ordinal)];

    private static string Headline(WorkStep[] apart, WorkStep[] fitted) => FormattableString.Invariant(
        $"{apart.Length} steps to take it apart, {fitted.Length} to put it together again.");

    private static IReadOnlyList<WorkStep> Numbered(WorkStep[] steps, int first) => [.. steps.Select((step, index) => step with { Number = first + index })];
}

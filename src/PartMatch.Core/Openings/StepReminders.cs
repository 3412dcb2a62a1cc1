using PartMatch.Core.Catalogue;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Openings;

/// <summary>What a builder asks or minds at a step, as the books have it of the kind of part that sits there; what was retracted does not count.</summary>
internal sealed class StepReminders(FamilyFacts family, OpenedPlan opened)
{
    private readonly ILookup<(string Kind, ReminderAt At), Reminder> _rows =
        family.Reminders.Where(row => row.Evidence?.IsRetracted != true).ToLookup(row => (row.Kind, row.At));

    public IReadOnlyList<StepReminder> At(string position, ReminderAt at) => [.. Rows(position, at).Select(row => Shown(position, row))];

    /// <param name="works">What is done on it.</param>
    public IEnumerable<StepReminder> Worked(string position, IEnumerable<Work> works)
    {
        var done = works.Select(work => work.Code).ToHashSet(StringComparer.Ordinal);
        return done.Count == 0 ? []
            : Rows(position, ReminderAt.Worked).Where(row => row.Works.Count == 0 || row.Works.Any(done.Contains)).Select(row => Shown(position, row));
    }

    /// <summary>What of it is tightened, where no value is recorded.</summary>
    public IReadOnlyList<string> Untold(string position) =>
        [.. Rows(position, ReminderAt.Tightened).Select(row => $"No tightening value is recorded for {row.Text}: take it from the maker's document.")];

    /// <param name="positions">Steps in their order; one kind reminds once.</param>
    public IReadOnlyList<StepReminder> BeforeStart(IReadOnlyList<string> positions) =>
    [
        .. positions.SelectMany(position => Rows(position, ReminderAt.Start).Select(row => (Row: row, Position: position)))
            .DistinctBy(one => one.Row).Select(one => Shown(one.Position, one.Row)),
    ];

    private IEnumerable<Reminder> Rows(string position, ReminderAt at) => family.FindPosition(position) is { } found ? _rows[(found.Kind, at)] : [];

    private StepReminder Shown(string position, Reminder row) =>
        new(opened.NameOf(position), row.Text, row.Note, row.Evidence is { } evidence ? SourceShown.Of(evidence) : null);
}

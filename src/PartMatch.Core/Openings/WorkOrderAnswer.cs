using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Parts;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Openings;

/// <summary>In which order the engine of a plan comes apart and goes together again, with what belongs beside each step.</summary>
/// <remarks>It is no manual: it orders the steps, and shows what the books record of each.</remarks>
public sealed record BuildWorkOrder(PlanAsked Asked, PlanStatus Status, string HeadlineText)
{
    /// <summary>Each step after all that has to be off before it.</summary>
    public IReadOnlyList<WorkStep> TakeApart { get; init; } = [];

    /// <summary>The plan's works in time, in the order in which they start.</summary>
    public IReadOnlyList<PlannedWork> Works { get; init; } = [];

    /// <summary>Each step before all that has to be off before it.</summary>
    public IReadOnlyList<WorkStep> PutTogether { get; init; } = [];

    /// <summary>What is filled in when everything is on and cured.</summary>
    public IReadOnlyList<WorkStep> Fill { get; init; } = [];

    /// <summary>What is minded before the engine is started, in the order of the steps that it comes from.</summary>
    public IReadOnlyList<StepReminder> BeforeStart { get; init; } = [];

    /// <summary>Of all steps and works.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    /// <summary>What the order leaves out.</summary>
    public IReadOnlyList<string> SaysNothing { get; init; } = [];

    public string Permalink { get; init; } = "";
}

/// <param name="Number">Counted over the whole order.</param>
/// <param name="Text">"Take off: Cam cover", "Fit: Pistons, P-11-4003-A".</param>
/// <param name="Because">Why it is touched at all.</param>
/// <param name="Chain">Positions from what is changed to this one.</param>
/// <param name="After">Steps that have to be done before this one, by their positions.</param>
public sealed record WorkStep(
    int Number, string Position, string Name, string Text, string Because, IReadOnlyList<string> Chain, IReadOnlyList<string> After)
{
    /// <summary>What goes there; null where it comes off, or is one of several.</summary>
    public string? Part { get; init; }

    public int? Pieces { get; init; }

    /// <summary>Works that are done on it while it is off.</summary>
    public IReadOnlyList<string> Works { get; init; } = [];

    /// <summary>What is renewed with it.</summary>
    public IReadOnlyList<StepRenewal> Renewals { get; init; } = [];

    /// <summary>How it is tightened, one for each source; sources may disagree, and nothing is averaged.</summary>
    public IReadOnlyList<StepTightening> Tightening { get; init; } = [];

    /// <summary>What of it is tightened without a recorded value, in a sentence each.</summary>
    public IReadOnlyList<string> NotRecorded { get; init; } = [];

    /// <summary>What a builder asks or minds at it.</summary>
    public IReadOnlyList<StepReminder> Reminders { get; init; } = [];

    /// <summary>Codes; the texts stand once, in the order.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}

/// <summary>A question or a caution at a step, without a number: the maker's document has those.</summary>
/// <param name="Evidence">Null where none is recorded.</param>
public sealed record StepReminder(string Name, string Text, string? Note, SourceShown? Evidence);

/// <param name="Amount">"12 mL"; null for a piece.</param>
/// <param name="CureHours">Before it may be filled.</param>
/// <param name="Evidence">Null where none is recorded.</param>
public sealed record StepRenewal(
    string Position, string Name, string? Part, string? Amount, string? Bead, decimal? CureHours, string? Note, SourceShown? Evidence);

/// <param name="Variant">The engine that the record speaks of.</param>
/// <param name="Passes">"30 N·m", "90 deg", in their order.</param>
public sealed record StepTightening(
    string Variant, IReadOnlyList<string> Passes, string? Sequence, Lubrication? Lubrication, SingleUse? SingleUse, IReadOnlyList<string> Notes,
    SourceShown Evidence);

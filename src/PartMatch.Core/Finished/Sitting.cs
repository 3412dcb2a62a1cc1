using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Finished;

/// <summary>What somebody found who built it, told in one sitting.</summary>
/// <param name="Date">On which day, <c>2027-03-14</c>, or in which month.</param>
/// <param name="Lines">The engine as it was finished, position by position; what is said of a line becomes findings, the others are the neighbours they were tried with.</param>
public sealed record Sitting(string Date, IReadOnlyList<SittingLine> Lines)
{
    /// <summary>Hours under load, a plain number; null where it was not run, or nobody counted.</summary>
    public string? Hours { get; init; }

    /// <summary>Power while it ran, with its unit.</summary>
    public string? Output { get; init; }

    public string? Fuel { get; init; }

    /// <summary>With what was measured.</summary>
    public string? Instrument { get; init; }

    /// <summary>Who tells it; the name of the history where it is left out.</summary>
    public string? Author { get; init; }
}

/// <summary>What is at one position, and what was found of it.</summary>
/// <param name="Part">As <c>maker:number</c>, or <c>none</c>.</param>
/// <param name="Mounts">Null: nothing is said of it.</param>
/// <param name="Runs">Null: nothing is said of it.</param>
/// <param name="Note">What was seen.</param>
public sealed record SittingLine(string Position, string Part, FindingOutcome? Mounts = null, FindingOutcome? Runs = null, string? Note = null)
{
    /// <summary>It is there and worked, whatever the orders and the plan tell.</summary>
    public bool Stands { get; init; }

    public bool IsTold => Mounts is not null || Runs is not null;
}

/// <summary>A finding of a sitting, as the books hold it.</summary>
/// <param name="With">Neighbours that are not the maker's own on the variant, as <c>position=part</c>, in ordinal order.</param>
public sealed record SittingFinding(string Part, string Variant, string Position, Axis Axis, FindingOutcome Outcome, IReadOnlyList<string> With, string? Note);

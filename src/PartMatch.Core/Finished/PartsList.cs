using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Finished;

/// <summary>A build on one page, to be shared with other builders: what is in it, what was worked, what was learned.</summary>
/// <param name="Engine">From which engine to which.</param>
/// <param name="Goal">What it is to do; null where nothing was asked.</param>
/// <param name="Parts">By group, then position, as the plan lists them; what stays as the donor had it included.</param>
/// <param name="Works">In the order in which they are done.</param>
/// <param name="Learned">What was found on this build, by position.</param>
/// <param name="Sources">The sittings in which it was told.</param>
/// <param name="Cost">Of the plan; null where there is none now.</param>
public sealed record PartsList(
    PlanAsked Asked, string Title, string Engine, string? Goal, PlanStatus Status, string HeadlineText, IReadOnlyList<ListedPart> Parts,
        IReadOnlyList<ListedWork> Works,
    IReadOnlyList<LearnedLine> Learned, IReadOnlyList<SourceShown> Sources, Money? Cost, IReadOnlyList<Caution> Cautions)
{
    public string Permalink { get; init; } = "";
}

/// <summary>Whether somebody has built it so.</summary>
public enum ListedStanding
{
    /// <summary>It was told in a sitting that this is what is there.</summary>
    Built,

    /// <summary>The plan has it so.</summary>
    Planned,
}

/// <summary>What is at one position.</summary>
/// <param name="OneOf">One number; several where one of them is chosen by measurement and nobody has told which; empty where nothing is there.</param>
public sealed record ListedPart(
    string Position, string Name, string Group, IReadOnlyList<string> OneOf, string? PartName, int? Pieces, string ActionText, IReadOnlyList<string> Works,
        ListedStanding Standing,
    Headline? Headline, Sureness? Sureness)
{
    /// <summary>What speaks against its being there and mounted, in words: not ordered, on the way, not looked at, work to be done. Empty where nothing does.</summary>
    public IReadOnlyList<string> NotYet { get; init; } = [];

    /// <summary>What is found of it if all comes as it is planned: it goes on, or goes on after work. Null where nothing is planned there.</summary>
    public FindingOutcome? Mounts { get; init; }

    /// <summary>How the engine then runs with it.</summary>
    public FindingOutcome? Runs { get; init; }
}

public sealed record ListedWork(string Name, string? Who, Money? Price, int? Days);

/// <summary>What was found at one position.</summary>
/// <param name="With">Neighbours that were not as built.</param>
public sealed record LearnedLine(
    string Position, string Name, string Part, FindingOutcome? Mounts, FindingOutcome? Runs, IReadOnlyList<string> With, string? Note, string Evidence,
        IReadOnlyList<string> Findings);

using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>Why a line is as it is: from the line back to what the builder asked for.</summary>
/// <param name="Steps">The line first; each step stands on those it names.</param>
/// <param name="Alternatives">What else could be there, with what keeps it away; the nearest in cost first.</param>
public sealed record BuildWhy(PlanAsked Asked, BuildLine Line, IReadOnlyList<WhyStep> Steps, IReadOnlyList<WhyAlternative> Alternatives, string Permalink);

/// <summary>What a step of a reason stands on.</summary>
public enum WhyGround
{
    /// <summary>The user asked for it.</summary>
    Wish,
    Goal,
    Target,

    /// <summary>What the donor is, and how it was found.</summary>
    Donor,
    Need,
    Joint,
    Stack,
    Companion,
    Finding,

    /// <summary>It is renewed because something is opened.</summary>
    Renewal,

    /// <summary>Nothing forces it: it is what the objective prefers.</summary>
    Objective,
}

/// <param name="Position">The line it speaks of.</param>
/// <param name="Code">The joint, stack or companion rule; null for others.</param>
/// <param name="On">Positions of the lines it stands on, to be asked about in turn.</param>
public sealed record WhyStep(
    string Position, WhyGround Ground, string Text, string? Code, IReadOnlyList<string> On, Sureness? Sureness, IReadOnlyList<string> Evidence);

/// <param name="Fit">The fit answer of it with the plan's neighbours.</param>
public sealed record WhyAlternative(string Part, string Name, Headline Headline, string Text, string Fit, string WhyNot);

/// <summary>What happens when a part is forced into a position.</summary>
/// <param name="CostMore">What it costs more (or, negative, less) than the plan without the force; null where one of the two does not exist.</param>
/// <param name="Changes">Lines that differ, in words.</param>
/// <param name="Conflict">What it breaks, where there is no plan with it.</param>
public sealed record BuildWhyNot(
    PlanAsked Asked, string Position, string Part, PlanStatus Status, string HeadlineText, Money? CostMore, int? DaysMore, IReadOnlyList<LineChange> Changes, BuildConflict? Conflict,
    string Permalink)
{
    /// <summary>The best plan with it; null where there is none.</summary>
    public BuildPlan? Plan { get; init; }
}

/// <param name="Was">In the plan without the force.</param>
public sealed record LineChange(string Position, string Name, string Was, string Becomes);

/// <summary>A smallest set of wishes and facts that cannot hold together: without any one of them, the others of the set can.</summary>
/// <param name="Members">Empty where nothing conflicts.</param>
public sealed record BuildConflict(PlanAsked Asked, PlanStatus Status, string HeadlineText, IReadOnlyList<ConflictMember> Members, string Permalink)
{
    /// <summary>Conflicts that stand behind it: each is there still when the members of the earlier ones are given up.</summary>
    public IReadOnlyList<FurtherConflict> Further { get; init; } = [];

    /// <summary>What the build does not say, for want of which offers do not count: with it said, what conflicts may be to be had.</summary>
    public IReadOnlyList<NotStated> NotStated { get; init; } = [];
}

/// <param name="Members">A smallest set as well.</param>
public sealed record FurtherConflict(IReadOnlyList<ConflictMember> Members);

/// <param name="Wish">A stable name of it: <c>budget</c>, <c>needed-by</c>, <c>keep:crankshaft</c>, <c>obtainable:piston</c>.</param>
/// <param name="Text">The wish or the fact as a sentence.</param>
/// <param name="Mend">The change that would resolve it.</param>
/// <param name="CostThen">What the best plan costs after that change; null where that is not reckoned.</param>
public sealed record ConflictMember(string Wish, string Text, string Mend, Money? CostThen, DateOnly? ReadyThen);

/// <summary>What each day sooner costs: every plan that no other beats in both.</summary>
/// <param name="Points">Soonest first.</param>
/// <param name="Swings">Which single price, delay or unknown fit would change the cheapest plan.</param>
public sealed record BuildFrontier(
    PlanAsked Asked, PlanStatus Status, string HeadlineText, IReadOnlyList<FrontierPoint> Points, IReadOnlyList<PlanSwing> Swings, string Plot, string Permalink);

/// <param name="DayCosts">What each day sooner than the next point costs; null for the last.</param>
/// <param name="Differs">From the next, cheaper point, in words.</param>
public sealed record FrontierPoint(int Days, DateOnly ReadyOn, Money Cost, Money? DayCosts, Sureness Sureness, IReadOnlyList<LineChange> Differs);

/// <summary>One thing that, were it otherwise, would change the plan.</summary>
/// <param name="What"><c>price</c>, <c>delay</c>, <c>fit</c>.</param>
/// <param name="Room">How far it may move before the plan changes, in words; the exact amount where it is money.</param>
public sealed record PlanSwing(string What, string Subject, string Text, Money? Room, string? Becomes);

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>The outcome of sizing: <see cref="InjectorsSized"/> or <see cref="InjectorsRefused"/>.</summary>
public abstract record InjectorOutcome;

/// <summary>There is no honest answer to the question as it stands.</summary>
/// <param name="Code">
/// <c>carburetted</c>, <c>direct-injected</c>, <c>cylinders-not-recorded</c>, <c>unknown-fuel</c>, <c>out-of-range</c>, <c>bsfc-impossible</c>,
/// <c>no-pressure-across</c> or <c>no-time-to-inject</c>.
/// </param>
/// <param name="Field">The part of the question it hangs on, named as the query parameter.</param>
public sealed record InjectorsRefused(string Code, string Field, string Reason, string Found, string Expected, string Mend) : InjectorOutcome;

/// <summary>What the goal needs, and what each injector of the catalogue can do for it.</summary>
/// <param name="Assumed">What was filled in or taken as a range, in the order of use.</param>
/// <param name="PressureAcross">Rail minus manifold.</param>
/// <param name="Working">The sums, in order, for a pencil.</param>
/// <param name="Injectors">In the order given until ranked, then by rank.</param>
public sealed record InjectorsSized(
    InjectorsAsked Asked,
    IReadOnlyList<Assumption> Assumed,
    Quantity PressureAcross,
    NeedPerInjector NeedPerInjector,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<SizedInjector> Injectors,
    IReadOnlyList<SizingWarning> Warnings,
    IReadOnlyList<Caution> Cautions) : InjectorOutcome
{
    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question with its defaults filled in.</summary>
/// <param name="Duty">0 to 1.</param>
public sealed record InjectorsAsked(
    string Family, string Variant, Quantity Power, Quantity Speed, Quantity Boost, Quantity Pressure, FuelSupply Supply, decimal Duty, string Fuel,
    int Cylinders, int InjectorsPerCylinder, int Shots, Quantity Voltage, QuantityRange? Bsfc, QuantityRange? DeadTime);

/// <summary>Something taken as true.</summary>
public sealed record Assumption(string Name, QuantityRange Range, string Source);

/// <summary>What each injector must feed when held open.</summary>
/// <param name="Mass">kg/s.</param>
/// <param name="Volume">Of the fuel, m3/s.</param>
/// <param name="RatedVolume">As it would be rated: n-heptane, 3.00 bar across, m3/s.</param>
public sealed record NeedPerInjector(QuantityRange Mass, QuantityRange Volume, QuantityRange RatedVolume);

/// <summary>One sum of the working.</summary>
/// <param name="With">The formula with the numbers put in.</param>
public sealed record WorkingStep(string What, string Formula, string With, string Result, string Source);

/// <summary>Something to know before relying on the answer.</summary>
public sealed record SizingWarning(string Code, string Text);

/// <summary>Does an injector feed the goal within the duty limit?</summary>
public enum Enough
{
    /// <summary>Even the highest duty stays within the limit.</summary>
    Yes,
    NotKnown,

    /// <summary>Already the expected duty is over the limit.</summary>
    No,
}

/// <summary>The rating as recorded; a member is absent when it is not.</summary>
public sealed record RatedAs(string? Flow, string? Pressure, string? Fluid);

/// <summary>A fact of a rating that is not recorded, and what stands for it.</summary>
public sealed record MissingFact(string Feature, string Text);

/// <summary>What one injector of the catalogue can do for the goal.</summary>
/// <param name="Missing">Facts of its rating that are not recorded; the answer is less sure by each.</param>
/// <param name="Because">The verdict in words.</param>
public sealed record SizedInjector(
    string Part,
    string Name,
    RatedAs Rated,
    Enough Enough,
    string Because,
    IReadOnlyList<MissingFact> Missing,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<SizingWarning> Warnings)
{
    /// <summary>Mass flow held open at the goal's pressure and fuel, kg/s; absent when the rating says too little.</summary>
    public QuantityRange? Flow { get; init; }

    /// <summary>At the goal's voltage and pressure across; absent when its table does not reach there.</summary>
    public QuantityRange? DeadTime { get; init; }

    /// <summary>Time open in a cycle, all squirts together, s.</summary>
    public QuantityRange? Pulse { get; init; }

    /// <summary>Share of the time open at the goal.</summary>
    public QuantityRange? Duty { get; init; }

    /// <summary>Power that a full set feeds at the duty limit, W.</summary>
    public QuantityRange? PowerAtDuty { get; init; }

    /// <summary>Will it fit; filled in when ranked.</summary>
    public InjectorFit? Fit { get; init; }

    /// <summary>1 = first choice; filled in when ranked.</summary>
    public int? Rank { get; init; }
}

/// <summary>Will it fit, in short.</summary>
/// <param name="Link">The address of the whole fit answer.</param>
public sealed record InjectorFit(Headline Headline, Sureness Sureness, string Link);

using PartMatch.Core.Air;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

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
    IReadOnlyList<SumWarning> Warnings,
    IReadOnlyList<Caution> Cautions) : SumOutcome
{
    /// <summary>What each input that has a range does to the rating wanted, the greatest first.</summary>
    public IReadOnlyList<Influence> Influences { get; init; } = [];

    /// <summary>What the injectors of one cylinder must feed together, and how they share it.</summary>
    public required NeedPerCylinder NeedPerCylinder { get; init; }

    /// <summary>What low and high of every range are.</summary>
    public string Ranges { get; init; } = RangesInWords.WorstCases;

    /// <summary>What boost does to the pressure across, from idle to the goal.</summary>
    public IReadOnlyList<PressureAtBoost> PressureThrough { get; init; } = [];

    /// <summary>The goal seen from the air.</summary>
    public required AirSide AirSide { get; init; }

    /// <summary>What idling asks of each injector; absent where it cannot be told.</summary>
    public IdleWanted? Idle { get; init; }

    /// <summary>Where it is drawn; the door fills it in.</summary>
    public IReadOnlyList<PlotLink> Plots { get; init; } = [];

    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The pressure across an injector at one boost.</summary>
/// <param name="Across">With the supply of the question.</param>
/// <param name="Flow">Flow there ÷ flow at the goal.</param>
/// <param name="Referenced">Across, had the regulator of the same setting a hose to the manifold.</param>
/// <param name="Fixed">Across, were the rail held at that pressure over ambient.</param>
public sealed record PressureAtBoost(Quantity Boost, QuantityRange Across, QuantityRange Flow, QuantityRange Referenced, QuantityRange Fixed);

/// <summary>What idling asks.</summary>
/// <param name="FuelFlow">Of the whole engine, kg/s.</param>
/// <param name="PressureAcross">Under the vacuum of the manifold, Pa.</param>
/// <param name="PerSquirt">Fuel in one squirt of one injector, kg.</param>
public sealed record IdleWanted(QuantityRange FuelFlow, QuantityRange PressureAcross, QuantityRange PerSquirt);

/// <summary>The question with its defaults filled in.</summary>
/// <param name="Duty">0 to 1.</param>
public sealed record InjectorsAsked(
    string Family, string Variant, Quantity Power, Quantity Speed, Quantity Boost, Quantity Pressure, FuelSupply Supply, decimal Duty, string Fuel,
    int Cylinders, int InjectorsPerCylinder, int Shots, Quantity Voltage, QuantityRange? Bsfc, QuantityRange? DeadTime)
{
    /// <summary>The duty limit with its ends, where it was asked as a range.</summary>
    public Quantity? DutyLimit { get; init; }

    public QuantityRange? Ethanol { get; init; }

    public QuantityRange? FuelTemperature { get; init; }

    /// <summary>In words, where one was given.</summary>
    public string? RailTable { get; init; }

    /// <summary>The second injector of each cylinder, where one was asked.</summary>
    public string? StagedWith { get; init; }
}

/// <summary>What each injector must feed when held open; in a staged set each pair that takes one pulse.</summary>
/// <param name="Mass">kg/s.</param>
/// <param name="Volume">Of the fuel, m3/s.</param>
/// <param name="RatedVolume">As it would be rated: n-heptane, 3.00 bar across, m3/s.</param>
public sealed record NeedPerInjector(QuantityRange Mass, QuantityRange Volume, QuantityRange RatedVolume);

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
    IReadOnlyList<SumWarning> Warnings)
{
    /// <summary>Number and maker, as a legend names it.</summary>
    public string Label { get; init; } = Part;

    /// <summary>What is recorded of the fuels that its wetted parts stand.</summary>
    public WettedFor WettedFor { get; init; } = WettedFor.NotKnown;

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

    /// <summary>Time shut between two squirts at the goal, s.</summary>
    public QuantityRange? Shut { get; init; }

    /// <summary>Can it still meter the little fuel of idling?</summary>
    public IdleCheck? Idle { get; init; }

    /// <summary>Will it fit; filled in when ranked.</summary>
    public InjectorFit? Fit { get; init; }

    /// <summary>1 = first choice; filled in when ranked.</summary>
    public int? Rank { get; init; }
}

/// <summary>Does the shortest squirt that idling asks for lie on the straight line of an injector?</summary>
public enum Controllable
{
    /// <summary>Even the shortest is as long as the smallest pulse that it meters straight.</summary>
    Yes,
    NotKnown,

    /// <summary>Already the expected one is shorter.</summary>
    No,
}

/// <summary>One injector at idle.</summary>
public sealed record IdleCheck(Controllable Controllable, string Because)
{
    /// <summary>One squirt, dead time included, s; absent where it cannot be told.</summary>
    public QuantityRange? Pulse { get; init; }
}

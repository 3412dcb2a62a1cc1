using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>What the goal asks of the pump, link by link where the supply gives out, and every pump of the catalogue.</summary>
/// <param name="Links">From the injectors back to the tank.</param>
/// <param name="FirstToGiveOut">
/// Is the chain enough, and which link carries least power, in words; several where their ranges overlap; also says which links nothing is known of.
/// </param>
/// <param name="Pumps">In the order given until ranked, then by rank.</param>
public sealed record SupplySized(
    SupplyAsked Asked, IReadOnlyList<Assumption> Assumed, PumpNeed Need, IReadOnlyList<SupplyLink> Links, string FirstToGiveOut,
        IReadOnlyList<Influence> Influences,
    IReadOnlyList<WorkingStep> Working, IReadOnlyList<SizedPump> Pumps, IReadOnlyList<SumWarning> Warnings, IReadOnlyList<Caution> Cautions) : SumOutcome
{
    /// <summary>The goal as the injectors are asked for it.</summary>
    internal InjectorsAsked? Goal { get; init; }

    /// <summary>What low and high of every range are.</summary>
    public string Ranges { get; init; } = RangesInWords.WorstCases;

    /// <summary>Where it is drawn; the door fills it in.</summary>
    public IReadOnlyList<PlotLink> Plots { get; init; } = [];

    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question with its defaults filled in.</summary>
public sealed record SupplyAsked(
    string Family, string Variant, Quantity Power, Quantity Speed, Quantity Boost, Quantity Pressure, FuelSupply Supply, decimal Duty, string Fuel,
        Quantity PumpVoltage)
{
    public string? Injector { get; init; }

    public string? Pump { get; init; }

    public string? Regulator { get; init; }

    /// <summary>Of line and filter, Pa, at <see cref="LineLossFlow"/>.</summary>
    public QuantityRange? LineLoss { get; init; }

    /// <summary>The flow that it belongs to, m3/s; at others it goes with the square of the flow.</summary>
    public QuantityRange? LineLossFlow { get; init; }

    /// <summary>Where one was given.</summary>
    public QuantityRange? ReturnCapacity { get; init; }
}

/// <summary>What the pump has to do at the goal.</summary>
/// <param name="Burnt">Volume flow of the fuel that is burnt, m3/s.</param>
/// <param name="Wanted">That and what flows back.</param>
/// <param name="RailPressure">Gauge, Pa.</param>
/// <param name="PressureAtPump">Rail and the loss on the way, gauge, Pa.</param>
/// <param name="HydraulicPower">What the flow takes out of the pump, W; the motor takes a multiple of it.</param>
public sealed record PumpNeed(QuantityRange Burnt, QuantityRange Wanted, QuantityRange RailPressure, QuantityRange PressureAtPump, QuantityRange HydraulicPower)
{
    /// <summary>All injectors of the chain held open: the most that they can take, m3/s.</summary>
    public QuantityRange? InjectorsHeldOpen { get; init; }
}

/// <summary>One link of the chain.</summary>
/// <param name="Link"><c>injectors</c>, <c>regulator</c>, <c>return</c> (at idle; not where a control unit slows the pump), <c>line</c> or <c>pump</c>.</param>
public sealed record SupplyLink(string Link, string? Part, Enough Enough, string Because)
{
    /// <summary>Power that it carries, W; absent where it has no limit of power or nothing is known.</summary>
    public QuantityRange? Power { get; init; }

    public IReadOnlyList<WorkingStep> Working { get; init; } = [];
}

/// <summary>What one pump of the catalogue does for the goal.</summary>
public sealed record SizedPump(string Part, string Name, Enough Enough, string Because, WettedFor WettedFor, IReadOnlyList<WorkingStep> Working)
{
    /// <summary>At the goal's voltage and pressure, m3/s; absent where its table does not reach there.</summary>
    public QuantityRange? Flow { get; init; }

    /// <summary>Flow ÷ wanted − 1.</summary>
    public QuantityRange? Margin { get; init; }

    /// <summary>Power that it carries, W: of the flow at which its delivery meets what the line loses at that very flow; absent where its table ends before.</summary>
    public QuantityRange? Power { get; init; }

    /// <summary>Gauge, Pa; absent where not recorded.</summary>
    public QuantityRange? ReliefPressure { get; init; }

    /// <summary>Will it fit; filled in when ranked.</summary>
    public InjectorFit? Fit { get; init; }

    /// <summary>1 = first choice; filled in when ranked.</summary>
    public int? Rank { get; init; }
}

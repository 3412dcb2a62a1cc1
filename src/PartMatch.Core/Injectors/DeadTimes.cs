using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>What is known of an injector's dead time at one voltage and pressure: a closed set of outcomes.</summary>
internal abstract record DeadTime;

/// <param name="IsAssumed">Nothing is recorded of this injector: common practice stands for it.</param>
internal sealed record KnownDeadTime(Spread Seconds, string Source, bool IsAssumed = false) : DeadTime;

/// <summary>There is a table, but it says nothing there.</summary>
internal sealed record DeadTimeOutsideTable(string Reason) : DeadTime;

/// <summary>Dead time from the recorded voltage × pressure table: between its points, never beyond them.</summary>
internal static class DeadTimes
{
    /// <summary>Source of a dead time that an injector's own table says.</summary>
    public const string OwnTable = "its table";

    private const string Curve = "dead-time";

    // Fewer say little of what is on the market: ours, no source.
    private const int FewestForARange = 5;

    /// <summary>Where nothing is recorded.</summary>
    public static KnownDeadTime CommonPractice { get; } = new(new Spread(0.0006, 0.0010, 0.0015), "0.6 … 1.0 … 1.5 ms at 14 V, common practice, no source",
        IsAssumed: true);

    /// <summary>What a goal is reckoned with: the dead times of the catalogue, where enough are known; else common practice.</summary>
    public static KnownDeadTime OfCatalogue(IReadOnlyList<Part> injectors, Spread volt, Spread acrossPa)
    {
        var known = injectors.Select(part => Of(part, volt, acrossPa)).OfType<KnownDeadTime>().Where(one => !one.IsAssumed).Select(one => one.Seconds)
            .OrderBy(seconds => seconds.Expected).ToList();
        return known.Count < FewestForARange
            ? CommonPractice
            : new KnownDeadTime(
                new Spread(known.Min(one => one.Low), known[known.Count / 2].Expected, known.Max(one => one.High)),
                FormattableString.Invariant($"least … middle … greatest of the {known.Count} injectors here whose table reaches {Volts(volt)} and {SumText.InBar(acrossPa)} across"));
    }

    /// <param name="volt">At the injector.</param>
    /// <param name="acrossPa">Pressure across it.</param>
    public static DeadTime Of(Part part, Spread volt, Spread acrossPa)
    {
        if (RecordedTable.Find(part, Curve) is not { } table)
        {
            return CommonPractice;
        }

        return table.At(volt, acrossPa) switch
        {
            TableRead read => new KnownDeadTime(read.Value, OwnTable),
            TableGap gap => new DeadTimeOutsideTable(FormattableString.Invariant($"its dead-time table has a gap at {gap.X:0.0#} V, {SumText.InBar(gap.Y)}")),
            _ => new DeadTimeOutsideTable(
                FormattableString.Invariant($"its dead time is recorded for {table.Xs[0]:0.0#} … {table.Xs[^1]:0.0#} V ")
                + $"and {SumText.InBar(table.Ys[0])} … {SumText.InBar(table.Ys[^1])} across, not for {Volts(volt)} and {SumText.InBar(acrossPa)}; nothing is read beyond a table"),
        };
    }

    /// <summary>Where a dead time comes from, with the place in its table.</summary>
    public static string SourceOf(KnownDeadTime deadTime, Spread volt, Spread acrossPa) =>
        deadTime.Source == OwnTable ? $"{OwnTable} at {Volts(volt)} and {SumText.InBar(acrossPa)} across" : deadTime.Source;

    private static string Volts(Spread volt) => volt.In(SumText.Volt, "0.0#").Text;
}

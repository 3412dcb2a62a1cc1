using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>What an input of the fuel sums can be; beyond these limits an answer would be nonsense with decimals.</summary>
internal static class InjectorBounds
{
    // Wide of any four-stroke engine with port injection: ours, no source.
    private const decimal SlowestPerMinute = 100;
    private const decimal FastestPerMinute = 25_000;
    private const decimal LowestVolt = 6;
    private const decimal HighestVolt = 60;
    private const decimal HighestPa = 3_000_000;
    private const decimal GreatestPowerW = 10_000_000;

    public static SumRefused? Check(InjectorQuestion question) =>
        Between("power", question.Power, 0, GreatestPowerW, "above 0 and at most 10 000 kW", "for example 180 kW")
        ?? Between("speed", question.Speed, SlowestPerMinute - 1, FastestPerMinute, "100/min … 25 000/min", "for example 6800/min")
        ?? Between("pressure", question.Pressure, 0, HighestPa, "above 0 and at most 30 bar: more is direct injection", "gauge, for example 3.0 bar")
        ?? Between("voltage", question.Voltage, LowestVolt - 0.001m, HighestVolt, "6 V … 60 V at the injectors", "for example 14 V")
        ?? Between("boost", question.Boost, -101_325, 1_000_000, "above −1.013 bar and at most 10 bar: it is a gauge pressure, 0 without boost",
            "boost over ambient, for example 1.1 bar")
        ?? Between("duty", question.Duty, 0, 1, "above 0 and at most 100 %: an injector cannot be open longer than always", "for example 85 %")
        ?? Between("idle-speed", question.IdleSpeed, SlowestPerMinute - 1, 5000, "100/min … 5000/min", "for example 850/min")
        ?? Between("displacement", question.Displacement, 0, 0.1m, "above 0 and at most 100 L, of the whole engine", "for example 1600 cm3")
        ?? Between("dead-time", question.DeadTime, 0, 0.05, "0 ms … 50 ms", "for example 0.92 ms, or 0.8..0.9..1.1 ms")
        ?? Between("ethanol", question.Ethanol, 0, 1, "0 % … 100 % by volume", "for example 70 %, or 51..70..83 %")
        ?? Between("fuel-temperature", question.FuelTemperature, 233.15, 353.15, "−40 °C … 80 °C", "for example 20 degC, or 10..20..40 degC")
        ?? Between("idle-manifold", question.IdleManifold, -101_325, 0, "−1.013 bar … 0 bar: gauge, so negative at idle", "for example -0.65 bar")
        ?? Between("altitude", question.Air.Altitude, -500, 10_000, "−500 m … 10 000 m", "for example 500 m")
        ?? Between("charge-temperature", question.Air.ChargeTemperature, 223.15, 473.15, "−50 °C … 200 °C", "for example 50 degC")
        ?? Between("volumetric-efficiency", question.Air.VolumetricEfficiency, 0.1, 2, "10 % … 200 %", "for example 90 %")
        ?? Between("lambda", question.Air.Lambda, 0.4, 2, "0.4 … 2", "for example 0.87")
        ?? Between("measured-pressure", question.Air.MeasuredPressure, 50_000, 120_000, "50 kPa … 120 kPa, absolute", "for example 98 kPa")
        ?? Between("measured-temperature", question.Air.MeasuredTemperature, 233.15, 333.15, "−40 °C … 60 °C", "for example 30 degC");

    public static SumRefused OutOfRange(string field, string found, string expected, string mend) =>
        new("out-of-range", field, $"This is outside what {field} can be.", found, expected, mend);

    /// <summary>The mend where a ratio was typed as a bare number that would do as percent; else null.</summary>
    public static string? PercentMeant(string text, bool wouldDo) => wouldDo && char.IsAsciiDigit(text[^1])
        ? $"did you mean {text.Replace(" … ", "..", StringComparison.Ordinal)} %? A number without a unit is a ratio: 1 is 100 %"
        : null;

    // The lower limit itself is out, the upper one is in: 0 W is no power, 100 % is a duty.
    private static SumRefused? Between(string field, Quantity? quantity, decimal above, decimal atMost, string expected, string mend) =>
        quantity is null || ((quantity.Low ?? quantity.Value) > above && (quantity.High ?? quantity.Value) <= atMost) ? null
            : OutOfRange(field, quantity.Text, expected, PercentMeant(quantity.Text, (quantity.High ?? quantity.Value) / 100 <= atMost) ?? mend);

    private static SumRefused? Between(string field, QuantityRange? range, double least, double most, string expected, string mend) =>
        range is null || (range.Low >= least && range.High <= most) ? null
            : OutOfRange(field, range.Text, expected, PercentMeant(range.Text, range.High / 100 <= most) ?? mend);
}

using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class InjectorTimingTests
{
    // Two turns: 120 000 ms/min ÷ 6800/min = 17.647 ms; at 6000/min 20 ms.
    [Theory]
    [InlineData(6800, 0.0176470588)]
    [InlineData(6000, 0.020)]
    public void A_cycle_is_two_turns(double speedPerMinute, double expectedSeconds) => Near(expectedSeconds, InjectorTiming.CycleSeconds(speedPerMinute), 1e-8);

    // Slope 220.588 g/min = 3.67647 mg/ms, offset 1.0 ms, 40 mg at 6000/min: 40 ÷ 3.67647 + 1.0 = 11.880 ms of 20 ms: 0.594.
    [Fact]
    public void Pulse_is_fuel_by_slope_plus_dead_time()
    {
        var pulse = InjectorTiming.PulseSeconds(Spread.Exactly(40e-6), Spread.Exactly(220.588e-3 / 60), 1, Spread.Exactly(0.001));
        Near(0.011880, pulse.Expected, 1e-4);
        Near(0.594, pulse.Expected / InjectorTiming.CycleSeconds(6000), 1e-4);
    }

    // 85 % of 17.647 ms less n × 1.0 ms: 0.85 − 0.056667 n; fifteen squirts take 0.85 exactly.
    [Theory]
    [InlineData(1, 0.793333)]
    [InlineData(2, 0.736667)]
    [InlineData(14, 0.056667)]
    [InlineData(15, 0.0)]
    [InlineData(16, -0.056667)]
    public void Dead_time_eats_duty_with_every_squirt(int shots, double expected) =>
        Assert.Equal(expected, InjectorTiming.EffectiveDuty(0.85, shots, Spread.Exactly(0.001), 120.0 / 6800).Expected, 1e-6);
}

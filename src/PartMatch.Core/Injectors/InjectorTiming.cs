using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>How long an injector is open in a cycle of a four-stroke engine, two turns of the crank.</summary>
public static class InjectorTiming
{
    /// <summary>Length of a cycle, s: 120 ÷ speed.</summary>
    public static double CycleSeconds(double speedPerMinute) => 120 / speedPerMinute;

    /// <summary>
    /// Share of the cycle in which fuel really flows: the duty less the dead time of each squirt. Negative where the dead time is longer than the
    /// time there is.
    /// </summary>
    /// <remarks>Dead time: the intercept of the straight line of mass over pulse width (the time offset of SAE J1832).</remarks>
    public static Spread EffectiveDuty(double duty, int shots, Spread deadTimeS, double cycleS) =>
        EffectiveDuty(Spread.Exactly(duty), shots, deadTimeS, Spread.Exactly(cycleS));

    /// <summary>The same with a duty and a speed that are ranges.</summary>
    public static Spread EffectiveDuty(Spread duty, int shots, Spread deadTimeS, Spread cycleS) => duty - (deadTimeS * shots / cycleS);

    /// <summary>Time shut between two squirts, s: what an injector has to close and get ready in. Never negative.</summary>
    /// <param name="pulseS">Time open in a cycle, over all its squirts.</param>
    public static Spread ShutSeconds(Spread pulseS, int shots, Spread cycleS) => ((cycleS - pulseS) / shots).NotNegative();

    /// <summary>Time open in a cycle, s, over all its squirts.</summary>
    /// <param name="massKg">Fuel wanted in one cycle.</param>
    /// <param name="flowKgS">Mass flow held open.</param>
    public static Spread PulseSeconds(Spread massKg, Spread flowKgS, int shots, Spread deadTimeS) =>
        (massKg / flowKgS) + (deadTimeS * shots);
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>What the maker fitted in the variant: what others are held against, and what the maker says the engine does with it.</summary>
internal static class FittedInjectors
{
    // Tables are recorded to a hundredth of a millisecond; ours, no source.
    private const double AlikeS = 0.000005;

    /// <summary>Says of each injector whether its dead time at the goal is that of the fitted one.</summary>
    public static IReadOnlyDictionary<string, InjectorFit> Compare(InjectorsSized sized, IReadOnlyDictionary<string, InjectorFit> fits)
    {
        List<SizedInjector> fitted = [.. sized.Injectors.Where(injector => fits.GetValueOrDefault(injector.Part)?.IsFitted == true)];
        // Several over the years with unlike dead times are nothing to hold another one against.
        var own = sized.Asked.DeadTime is null && fitted.Count > 0
            && fitted.TrueForAll(one => Known(one) is { } each && Alike(each, Known(fitted[0]) ?? 0)) ? fitted[0] : null;
        return sized.Injectors.Where(injector => fits.ContainsKey(injector.Part)).ToDictionary(
            injector => injector.Part, injector => Compared(injector, fits[injector.Part], own), StringComparer.Ordinal);
    }

    /// <summary>The rating that the maker gives the engine with the fitted injectors, where the goal asks no more of them; else null.</summary>
    /// <remarks>No more power, no faster, the same fuel, supply and pressure, as many injectors and squirts;
    /// at less speed the dead time takes less of the cycle.</remarks>
    public static string? RatedWith(InjectorsAsked asked, FamilyFacts facts)
    {
        var engine = InjectorEngine.Read(facts.EngineFacts, asked.Variant);
        return engine is { RatedPower: { } power, RatedSpeed: { } speed }
            && (asked.Power.High ?? asked.Power.Value) <= power.Value && (asked.Speed.High ?? asked.Speed.Value) <= speed.Value
            && asked.Fuel == engine.Fuel && asked.Supply == engine.Supply && engine.RailPressure is { } rail && asked.Pressure.Value == rail.Value
            && asked.StagedWith is null && asked.RailTable is null && (asked.Cylinders, asked.InjectorsPerCylinder, asked.Shots)
                == (engine.Cylinders, engine.InjectorsPerCylinder ?? 1, engine.Shots ?? 1)
            ? $"{power.Text} at {SumText.Number((double)speed.Value, "0.##")}/min ({SourceOf(asked.Variant, facts)})"
            : null;
    }

    public static bool AreFitted(FamilyFacts facts, string variant, string part) =>
        InjectorFits.FindPosition(facts) is { } position && facts.FitmentsAt(variant, position.Code).Any(fitment => fitment.Part == part);

    /// <summary>Adds what the maker rates the engine at with it. The verdict stays that of the sums.</summary>
    public static SizedInjector Say(SizedInjector injector, string rated) => injector with { Because = injector.Because + InWords(injector.Enough, rated) };

    /// <summary>The same as a sentence behind a verdict.</summary>
    public static string InWords(Enough enough, string rated) =>
        $" The maker fitted it and rates the engine with it at {rated}" + enough switch
        {
            Enough.Yes => ".",
            Enough.NotKnown => ", which speaks for the expected figures and not for the worst of them; "
                + "the verdict and the place in the list stay those of the sums.",
            _ => ", so a figure taken here is worse than this engine’s, the specific consumption first: "
                + "measure it and give it; the verdict stays that of the sums.",
        };

    private static InjectorFit Compared(SizedInjector injector, InjectorFit fit, SizedInjector? own) => fit.IsFitted ? fit : fit with
    {
        DeadTime = own is not null && Known(own) is { } fitted && Known(injector) is { } one
            ? Alike(one, fitted) ? DeadTimeAgainstFitted.Same : DeadTimeAgainstFitted.Another
            : DeadTimeAgainstFitted.NotKnown,
        FittedDeadTime = own?.DeadTime?.Text,
    };

    private static bool Alike(double one, double other) => Math.Abs(one - other) < AlikeS;

    // What common practice stands for is not known of this one.
    private static double? Known(SizedInjector injector) =>
        injector.Warnings.Any(warning => warning.Code == "dead-time-not-recorded") ? null : injector.DeadTime?.Expected;

    // As weak as the weaker of the two: what was fitted, and what the engine is rated at.
    private static string SourceOf(string variant, FamilyFacts facts)
    {
        var position = InjectorFits.FindPosition(facts);
        List<Evidence?> sources =
        [
            .. position is null ? [] : facts.FitmentsAt(variant, position.Code).Select(fitment => fitment.Evidence),
            .. facts.EngineFacts.Where(fact => fact.Variant == variant && fact.Property == "rated-power" && fact.Evidence?.IsRetracted != true)
                .Select(fact => fact.Evidence).Take(1),
        ];
        return sources.MinBy(source => (int?)source?.Grade ?? -1) is { } weakest
            ? $"{FitWording.InWords(Codes.Of(weakest.Grade))}, {weakest.Code}"
            : "no source";
    }
}

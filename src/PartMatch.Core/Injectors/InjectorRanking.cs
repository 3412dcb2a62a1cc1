using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Injectors;

/// <summary>Which of the injectors first?</summary>
public static class InjectorRanking
{
    /// <summary>The answer with its injectors ranked by what they can do and how they fit, what the maker fitted compared and named.</summary>
    /// <param name="injectors">The injectors of the catalogue, to ask whether they fit.</param>
    public static InjectorsSized Rank(InjectorsSized sized, FamilyFacts facts, IReadOnlyList<Part> injectors)
    {
        var places = InjectorPlaces.Of(sized.Asked, facts);
        var fits = FittedInjectors.Compare(sized, InjectorFits.Of(facts, sized.Asked.Variant, injectors));
        fits = places.AreEnough ? fits : fits.ToDictionary(fit => fit.Key, fit => fit.Value with { OnlyFor = places.OnlyFor }, StringComparer.Ordinal);
        var rated = FittedInjectors.RatedWith(sized.Asked, facts);
        return sized with
        {
            Warnings = places.AreEnough ? sized.Warnings : [places.Warning, .. sized.Warnings],
            Injectors = [.. Rank(sized.Injectors, fits).Select(injector =>
                rated is not null && injector.Fit is { IsFitted: true } ? FittedInjectors.Say(injector, rated) : injector)],
        };
    }

    /// <summary>
    /// Orders by enough (yes, not known, no), fit headline (best first), those before others against which nothing speaks but their flow, among those
    /// that are enough the smallest flow, then part; numbers them from 1 and says why.
    /// </summary>
    /// <param name="sized">The injectors of an <see cref="InjectorsSized"/>.</param>
    /// <param name="fits">Fit by part; a part without one counts as not known yet.</param>
    public static IReadOnlyList<SizedInjector> Rank(IReadOnlyList<SizedInjector> sized, IReadOnlyDictionary<string, InjectorFit> fits)
    {
        var ordered = sized
            .Select(injector => injector with { Fit = fits.GetValueOrDefault(injector.Part) })
            .OrderBy(injector => injector.Enough)
            .ThenBy(HeadlineOf)
            .ThenBy(injector => injector.Fit?.OnlyFlowDiffers != true)
            .ThenBy(injector => injector.Enough == Enough.Yes ? injector.Flow?.Expected ?? 0 : 0)
            .ThenBy(injector => injector.Part, StringComparer.Ordinal)
            .ToList();
        return [.. ordered.Select((injector, index) =>
            injector with { Rank = index + 1, Because = $"{injector.Because} {FitInWords(injector)}{Smallest(ordered, index)}" })];
    }

    private static Headline HeadlineOf(SizedInjector injector) => injector.Fit?.Headline ?? Headline.NotKnownYet;

    private static string FitInWords(SizedInjector injector) => injector.Fit is { } fit
        ? $"{FitWording.Of(fit.Headline)} ({fit.Sureness.ToString().ToLowerInvariant()}){(fit.OnlyFor is { } places ? $" for {places} only" : "")}{WhyDifferent(injector, fit)}."
        : "Whether it fits was not asked.";

    private static string WhyDifferent(SizedInjector injector, InjectorFit fit)
    {
        var deadTime = fit.DeadTime == DeadTimeAgainstFitted.Another
            ? $"its dead time is {injector.DeadTime?.Text} at the goal instead of {fit.FittedDeadTime}"
            : "";
        return (fit.OnlyFlowDiffers, fit.Differs.Count, fit.DeadTime) switch
        {
            (true, _, DeadTimeAgainstFitted.Same) =>
                ": only the flow differs, the dead time at the goal is the same, and the control unit has to be set for the flow",
            (true, _, DeadTimeAgainstFitted.Another) => $": the flow differs, and {deadTime}; the control unit has to be set for both",
            (true, _, _) =>
                ": of what is recorded only the flow differs; whether its dead time does is not known, and the control unit has to be set for both",
            (_, > 0, _) => $": besides its flow, wrong or not known: {string.Join(", ", fit.Differs.Select(what => what.Replace('-', ' ')))}"
                + (deadTime.Length > 0 ? $"; {deadTime}" : ""),
            _ => deadTime.Length > 0 ? $"; {deadTime}, and the control unit has to be set for it" : "",
        };
    }

    // Only where there is something to choose between.
    private static string Smallest(List<SizedInjector> ordered, int index)
    {
        var injector = ordered[index];
        bool Alike(int other) => other >= 0 && other < ordered.Count && ordered[other].Enough == Enough.Yes
            && HeadlineOf(ordered[other]) == HeadlineOf(injector)
            && ordered[other].Fit?.OnlyFlowDiffers == injector.Fit?.OnlyFlowDiffers;
        return injector.Enough == Enough.Yes && !Alike(index - 1) && Alike(index + 1)
            ? " The smallest that is enough of those that fit as well as it does." : "";
    }
}

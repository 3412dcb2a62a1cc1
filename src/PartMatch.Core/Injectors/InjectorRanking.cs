using PartMatch.Core.Fit;

namespace PartMatch.Core.Injectors;

/// <summary>Which of the injectors first?</summary>
public static class InjectorRanking
{
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
        ? $"{FitWording.Of(fit.Headline)} ({fit.Sureness.ToString().ToLowerInvariant()}){WhyDifferent(fit)}."
        : "Whether it fits was not asked.";

    private static string WhyDifferent(InjectorFit fit) =>
        fit.OnlyFlowDiffers ? ": only the flow differs, and the control unit has to be set for it"
        : fit.Differs.Count == 0 ? ""
        : $": besides its flow, wrong or not known: {string.Join(", ", fit.Differs.Select(what => what.Replace('-', ' ')))}";

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

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Identification;

namespace PartMatch.Core.Yard;

/// <summary>Checks that can be made where no bench is.</summary>
internal static class YardChecks
{
    /// <summary>Of what is quickest to see no more are named. Ours, no source.</summary>
    private const int MostQuick = 3;

    /// <summary>Everything but the bench.</summary>
    public static IReadOnlyList<Method> Tools { get; } = [.. TellApartTerms.AllTools.Where(tool => tool != Method.Bench)];

    public static bool CanBeMade(Method method) => method != Method.Bench;

    /// <summary>What is quickest to see of a part that nothing recorded can be taken for.</summary>
    public static IReadOnlyList<Confirmation> Quickest(Kind? kind, Part part) => kind is null
        ? []
        :
        [
            .. kind.Checks.Where(check => CanBeMade(check.Method) && kind.FindFeature(check.Feature) is { Type: not FeatureType.Curve })
                .Select(check => (check, value: ValueSelection.Of(part, check.Feature) as StatedValue)).Where(one => one.value is not null)
                .OrderBy(one => one.check.Minutes).ThenBy(one => one.check.Method).ThenBy(one => one.check.Feature, StringComparer.Ordinal)
                .DistinctBy(one => one.check.Feature).Take(MostQuick)
                .Select(one => new Confirmation(
                    new Observable(null, kind, kind.FindFeature(one.check.Feature)!, one.check, []).Shown(), FitWording.Text(one.value!), [])), // looked at just above
        ];
}

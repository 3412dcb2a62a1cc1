using System.Globalization;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Identification;

/// <summary>Which two candidates no check at hand separates, why, and what would.</summary>
internal static class InseparablePairs
{
    private const int MostShown = 4;

    public static IReadOnlyList<Inseparable> Of(
        IdentificationSubject subject, Observable[] allowed, IReadOnlyList<(int One, int Other)> pairs, Func<int, int, string?> relation)
    {
        KeyTest[] tests = [.. allowed.Select(one => one.AsTest())];
        return
        [
            .. pairs.Where(pair => !Array.Exists(tests, test => test.Separates(pair.One, pair.Other)))
                .Select(pair => Describe(subject, allowed, pair.One, pair.Other, relation(pair.One, pair.Other))),
        ];
    }

    private static Inseparable Describe(IdentificationSubject subject, Observable[] allowed, int one, int other, string? relation)
    {
        IReadOnlyList<Separator> would =
        [
            .. ByOtherMeans(subject, allowed, one, other).Concat(IfRecorded(subject, one, other))
                .DistinctBy(separator => (separator.Feature, separator.Name)).Take(MostShown),
        ];
        var names = $"{subject.Candidates[one].Short} and {subject.Candidates[other].Short}";
        var text = relation is not null ? relation
            : would.Count > 0 ? $"No check at hand separates {names}."
            : $"Nothing recorded separates {names}: no feature with a check differs, or lacks a value.";
        return new Inseparable([subject.Candidates[one].Code, subject.Candidates[other].Code], text, would, relation is not null);
    }

    private static IEnumerable<Separator> ByOtherMeans(IdentificationSubject subject, Observable[] allowed, int one, int other) =>
        subject.Observables.Except(allowed).Where(observable => observable.AsTest().Separates(one, other))
            .Select(observable => Separator(
                observable,
                string.Create(CultureInfo.InvariantCulture, $"in hand, {LookAlikeWording.By(observable.Check.Method)}, {observable.Minutes:0.##} min.")));

    // A value that nobody has recorded may be the one that differs.
    private static IEnumerable<Separator> IfRecorded(IdentificationSubject subject, int one, int other) =>
        subject.Observables.Where(observable => IsOf(observable, subject.Candidates[one]) && (IsSilent(observable, one) || IsSilent(observable, other)))
            .Select(observable => Separator(
                observable, $"if it were recorded for {Missing(subject, observable, one, other)}: {LookAlikeWording.By(observable.Check.Method)}."));

    private static Separator Separator(Observable observable, string takes) => new(
        observable.Address, observable.Name, observable.Check.Method, observable.Minutes, $"{FitWording.AsSentence(observable.Name)}, {takes}");

    private static bool IsOf(Observable observable, SubjectCandidate candidate) =>
        candidate.Part is null || observable.Kind is null || candidate.Part.Kind == observable.Kind.Code;

    private static bool IsSilent(Observable observable, int candidate) => observable.Values[candidate].Count == 0;

    private static string Missing(IdentificationSubject subject, Observable observable, int one, int other) =>
        string.Join(" and ", new[] { one, other }.Where(candidate => IsSilent(observable, candidate)).Select(candidate => subject.Candidates[candidate].Short));
}

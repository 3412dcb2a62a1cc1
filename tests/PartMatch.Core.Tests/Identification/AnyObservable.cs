using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Identification;
using PartMatch.Core.Measures;
using PartMatch.Core.Tests.Catalogue;

namespace PartMatch.Core.Tests.Identification;

/// <summary>One check of one feature, <c>size</c>, by itself; lengths in mm. A candidate's value of null is not recorded.</summary>
internal static class AnyObservable
{
    /// <param name="uncertainty">In mm; null when not recorded.</param>
    public static Observable Lengths(Method method, decimal? uncertainty, params (decimal Value, decimal Spread)?[] candidates) => Of(
        FeatureType.Quantity, TestFamily.Millimetre, [], method, uncertainty / 1000,
        [.. candidates.Select(one => one is { } length ? [Length(length.Value, length.Spread)] : Array.Empty<StatedValue>())]);

    public static Observable Counts(decimal? uncertainty, params int?[] candidates) => Of(
        FeatureType.Count, null, [], Method.Count, uncertainty,
        [.. candidates.Select(one => one is { } count ? [Count(count)] : Array.Empty<StatedValue>())]);

    /// <param name="candidates">For each the choices it can have: several of them are several possible values.</param>
    public static Observable Choices(params string[]?[] candidates) => Of(
        FeatureType.Choice, null, ["grey", "red", "sky-blue"], Method.Photo, null,
        [.. candidates.Select(one => (one ?? []).Select(choice => Stated(new ChoiceReading(choice))).ToArray())]);

    /// <param name="candidates">For each one set of choices.</param>
    public static Observable Sets(params string[]?[] candidates) => Of(
        FeatureType.Choices, null, ["grey", "red", "sky-blue"], Method.Photo, null,
        [.. candidates.Select(one => one is null ? Array.Empty<StatedValue>() : [Stated(new ChoicesReading(one))])]);

    public static Observable Of(FeatureType type, Unit? unit, string[] choices, Method method, decimal? uncertainty, IReadOnlyList<IReadOnlyList<StatedValue>> values) =>
        new(null, null, new Feature("size", "size", type, unit, choices), new Check("size", method, 2, uncertainty, null), values);

    public static StatedValue Count(int count) => Stated(new CountReading(count, $"{count}"));

    public static StatedValue Length(decimal value, decimal spread = 0) => Stated(TestFamily.Mm(value, spread));

    /// <summary>One value on a maker's document, as the base weighs it.</summary>
    public static StatedValue Stated(Reading reading) =>
        ValueSelection.Of(reading, TestFamily.Document) as StatedValue ?? throw new InvalidOperationException($"{reading.Text} is not a value that counts.");

    /// <summary>Candidates a, b, c … with these checks.</summary>
    public static IdentificationSubject Subject(params Observable[] observables) => new(
        [.. observables[0].Values.Select((_, index) => new SubjectCandidate(Letter(index), Letter(index), Letter(index), 1, null))],
        "",
        IdentificationSubject.Ordered(observables));

    /// <summary>The candidates of a set as letters: "ac" for the first and the third.</summary>
    public static string Letters(ulong candidates) => string.Concat(IdentificationKey.Members(candidates).Select(Letter));

    private static string Letter(int candidate) => ((char)('a' + candidate)).ToString();
}

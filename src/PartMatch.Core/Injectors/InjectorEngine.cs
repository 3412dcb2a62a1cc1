using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Injectors;

/// <summary>What the sums need to know of the engine as built; null = not recorded.</summary>
/// <param name="FuelSystem"><c>port-injected</c>, <c>direct-injected</c> or <c>carburetted</c>.</param>
/// <param name="Induction"><c>natural</c> or <c>boosted</c>.</param>
/// <param name="BoostPa">Gauge pressure it was built for.</param>
internal sealed record InjectorEngine(
    string? FuelSystem, string? Induction, int? Cylinders, int? InjectorsPerCylinder, int? Shots, decimal? BoostPa, decimal? RedlinePerMinute)
{
    /// <summary>More cylinders, injectors or squirts than any engine has; keeps the sums away from absurd counts.</summary>
    public const int MostPieces = 64;

    public static InjectorEngine Read(IReadOnlyList<EngineFact> facts, string variant)
    {
        KnownValue Of(string property) => facts
            .Where(fact => fact.Variant == variant && fact.Property == property)
            .Select(fact => ValueSelection.Of(fact.Reading, fact.Evidence))
            .FirstOrDefault(value => value is StatedValue, NotRecorded.Instance);
        string? Word(string property) => Of(property) is StatedChoices { Choices: [var word] } ? word : null;
        int? Count(string property) => Of(property) is StatedCount { Value: >= 1 and <= MostPieces and var count } ? (int)count : null;
        decimal? Amount(string property) => Of(property) is StatedQuantity quantity ? quantity.Nominal : null;

        return new InjectorEngine(
            Word("fuel-system"), Word("induction"), Count("cylinders"), Count("injectors-per-cylinder"), Count("shots-per-cycle"), Amount("boost"), Amount("redline"));
    }
}

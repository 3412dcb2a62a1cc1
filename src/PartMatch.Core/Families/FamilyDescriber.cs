using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;
using PartMatch.Core.Variants;

namespace PartMatch.Core.Families;

/// <summary>Puts a family, or one variant of it, into the words and units of an answer.</summary>
public static class FamilyDescriber
{
    public static FamilyAnswer Describe(FamilyFacts facts) => new(
        new FamilyAsked(facts.Family.Code), facts.Family.Code, facts.Family.Title, facts.Family.Maker, facts.Family.Note,
        [.. facts.Variants.Select(VariantSummary.Of)],
        [.. facts.Positions.Select(position => position.Group).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
        [.. facts.Positions.Select(position => new PositionSummary(position.Code, position.Name, position.Group, position.Kind, position.Role))]);

    /// <param name="variant">A variant of this family.</param>
    public static VariantAnswer Describe(FamilyFacts facts, Variant variant)
    {
        var alone = VariantComparison.Decide(facts, new CompareQuestion([variant.Code], null, Show.All, new Dictionary<string, BuildDate>()));
        return new VariantAnswer(
            new VariantAsked(facts.Family.Code, variant.Code),
            VariantSummary.Of(variant),
            [.. facts.EngineFacts.Where(fact => fact.Variant == variant.Code).Select(FactOf)],
            [.. facts.Positions.Zip(alone.Positions, PositionOf)]);
    }

    private static VariantPosition PositionOf(Position position, ComparedPosition compared) => new(
        position.Code, position.Name, position.Group, position.Kind, compared.Fitted[0].State, compared.Fitted[0].Parts);

    private static DescribedFact FactOf(EngineFact fact) => new(
        fact.Property, fact.Reading.Text,
        fact.Reading is QuantityReading quantity ? new Quantity(quantity.Value, UnitTable.BaseOf(quantity.Unit.Dimension).Symbol, quantity.Text) : null,
        SourceShown.Of(fact.Evidence));
}

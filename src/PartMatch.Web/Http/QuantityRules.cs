using FluentValidation;
using FluentValidation.Results;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;

namespace PartMatch.Web.Http;

/// <summary>Rules for quantities in a query: the parser's own refusal, with its own problem type, becomes the error. What is left out passes.</summary>
internal static class QuantityRules
{
    private const int MostPieces = 10_000;

    public static IRuleBuilderOptionsConditions<T, string?> MustBeQuantity<T>(this IRuleBuilder<T, string?> rule, Dimension dimension) =>
        rule.Custom((text, context) =>
        {
            if (!string.IsNullOrWhiteSpace(text) && QuantityParser.Parse(text, dimension) is QuantityRefused refused)
            {
                context.AddFailure(Failure(context.PropertyPath, text, refused));
            }
        });

    public static IRuleBuilderOptionsConditions<T, string?> MustBeRange<T>(this IRuleBuilder<T, string?> rule, Dimension dimension) =>
        rule.Custom((text, context) =>
        {
            if (!string.IsNullOrWhiteSpace(text) && QuantityRangeParser.Parse(text, dimension) is RangeRefused refused)
            {
                context.AddFailure(Failure(context.PropertyPath, text, refused.Reason));
            }
        });

    public static IRuleBuilderOptionsConditions<T, string?> MustBeRailTable<T>(this IRuleBuilder<T, string?> rule) =>
        rule.Custom((text, context) =>
        {
            if (text is not null && RailTableParser.Parse(text) is RailTableRefused refused)
            {
                context.AddFailure(Failure(context.PropertyPath, text, refused.Reason));
            }
        });

    public static IRuleBuilderOptions<T, string?> MustBeCount<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(text => text is null || CommonRules.FindWhole(text) is >= 0 and <= MostPieces)
        .Otherwise($"a whole number up to {MostPieces}, digits only", "leave it out to take what the variant has");

    /// <summary>A whole number that may be negative: teeth off a mark.</summary>
    public static IRuleBuilderOptions<T, string?> MustBeSteps<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(text => text is null || TypedQuantities.FindSteps(text) is >= -MostPieces and <= MostPieces)
        .Otherwise("a whole number, with a minus in front for the other way", "1 is one tooth advanced, -1 one tooth retarded");

    private static ValidationFailure Failure(string property, string text, QuantityRefused refused) => new(property, refused.Title, text)
    {
        ErrorCode = refused.Code,
        CustomState = new Mending(refused.Expected, refused.Mend, refused.Found, refused.Title),
    };
}

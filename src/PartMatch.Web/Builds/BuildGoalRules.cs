using FluentValidation;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

/// <summary>What a goal must be: quantities as strict as everywhere, so that a bare hp is asked back.</summary>
/// <remarks>Boost is one value and no range, because the rules of boost are judged at it.</remarks>
internal static class BuildGoalRules
{
    public static InlineValidator<BuildGoal> Make()
    {
        var rules = new InlineValidator<BuildGoal>();
        rules.RuleFor(goal => goal.Power).MustBeRange(Dimension.Power);
        rules.RuleFor(goal => goal.Power).Must(power => IsMoreThanNothing(power, Dimension.Power)).Otherwise("more than 0");
        rules.RuleFor(goal => goal.Power).Must((goal, power) => power is not null || goal.Speed is null)
            .Otherwise("a power together with the speed", "for example 180 kW; the two size the injectors, or leave both out");
        rules.RuleFor(goal => goal.Speed).MustBeRange(Dimension.Speed);
        rules.RuleFor(goal => goal.Speed).Must(speed => IsMoreThanNothing(speed, Dimension.Speed)).Otherwise("more than 0");
        rules.RuleFor(goal => goal.Speed).Must((goal, speed) => speed is not null || goal.Power is null)
            .Otherwise("the speed at which the power is made", "for example 6800/min; the two size the injectors, or leave both out");
        rules.RuleFor(goal => goal.Boost).MustBeQuantity(Dimension.Pressure);
        rules.RuleFor(goal => goal.Boost).Must(boost => EndsOf(boost, Dimension.Pressure) is not { Low: < 0 })
            .Otherwise("zero or more, over ambient");
        rules.RuleFor(goal => goal.Pressure).MustBeRange(Dimension.Pressure);
        rules.RuleFor(goal => goal.Pressure).Must(pressure => IsMoreThanNothing(pressure, Dimension.Pressure)).Otherwise("more than 0");
        rules.RuleFor(goal => goal.Duty).MustBeRange(Dimension.Ratio);
        rules.RuleFor(goal => goal.Duty)
            .Must(duty => IsMoreThanNothing(duty, Dimension.Ratio) && (EndsOf(duty, Dimension.Ratio) is not { High: var high } || high <= 1))
            .Otherwise("more than 0 % and at most 100 %", "85 % is usual; common practice, no source");
        rules.RuleFor(goal => goal.Supply).Must(supply => supply is null || Codes.Find<FuelSupply>(supply) is not null)
            .WithState((_, supply) => new Mending($"one of {string.Join(", ", Codes.All<FuelSupply>())}", MeantBy(supply, Codes.All<FuelSupply>())));
        rules.RuleFor(goal => goal.Fuel).Must(fuel => fuel is null || Fuels.Find(fuel) is not null)
            .WithState((_, fuel) => new Mending(
                $"one of {string.Join(", ", Fuels.All.Select(known => known.Code))}", MeantBy(fuel, [.. Fuels.All.Select(known => known.Code)])));
        return rules;
    }

    private static string? MeantBy(string? found, IReadOnlyCollection<string> known) =>
        Nearest.Find(found ?? "", known) is { } near ? $"did you mean {near}?" : null;

    private static bool IsMoreThanNothing(string? text, Dimension dimension) => EndsOf(text, dimension) is not { Low: <= 0 };

    /// <summary>Null where nothing was said, or it cannot be read, which is told by itself.</summary>
    private static (decimal Low, decimal High)? EndsOf(string? text, Dimension dimension) =>
        text is not null && QuantityRangeParser.Parse(text, dimension) is RangeRead { Quantity: { Value: var value } read }
            ? (read.Low ?? value, read.High ?? value) : null;
}

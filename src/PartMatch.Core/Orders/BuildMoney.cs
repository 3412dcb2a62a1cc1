using PartMatch.Core.Builds;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Orders;

/// <summary>The money of a build. Spent, committed and to go are the whole, to the least unit; deposits that come back stand apart.</summary>
/// <param name="ToGo">The rest of the plan; null where there is none, or it was not asked for.</param>
public sealed record BuildMoney(Money Spent, Money Committed, Money? ToGo, Money? Whole, Money DepositsOwed, string Text)
{
    /// <param name="plan">Null where none was asked for.</param>
    public static BuildMoney Of(BuildBought bought, BuildPlan? plan)
    {
        Money Say(long minor) => new Amount(minor, bought.Currency).ToMoney();
        var (spent, committed, deposits) = (Say(bought.Spent), Say(bought.Committed), Say(bought.DepositsOwed));
        var rest = plan switch
        {
            null => "; what is to go stands in the plan",
            { Cost: { } cost } => $" + {cost.ToGo.Amount} to go = {cost.Total.Amount} {bought.Currency}",
            _ => $"; what is to go is not known: {plan.HeadlineText}",
        };
        var back = bought.DepositsOwed > 0 ? $"; {deposits.Amount} of deposits come back besides, for old parts" : "";
        return new BuildMoney(spent, committed, plan?.Cost?.ToGo, plan?.Cost?.Total, deposits, $"{spent.Amount} spent + {committed.Amount} ordered and not paid{rest}{back}.");
    }
}

using System.Globalization;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>A plan in words.</summary>
internal static class PlanWords
{
    /// <summary>What stands at a position of services, which nobody buys or fits.</summary>
    public const string AsDeclared = "As declared";

    /// <summary>Nothing is there and nothing comes there: nobody has to leave anything off.</summary>
    public const string StaysEmpty = "Stays empty";

    /// <summary>Nobody recorded what the donor has there.</summary>
    public const string StaysAsItIs = "As it is, not recorded";

    public static string Of(LineAction action) => action switch
    {
        LineAction.Keep => "Keep",
        LineAction.KeepWithWork => "Keep, with work",
        LineAction.Replace => "Replace",
        LineAction.Add => "Add",
        LineAction.LeaveOff => "Leave off",
        _ => "Renew",
    };

    public static string NoPlan(PlanStatus status) => status switch
    {
        PlanStatus.Infeasible => "No plan holds all of your wishes: see what conflicts.",
        PlanStatus.StoppedByYou => "Stopped by you before any plan was found.",
        _ => "Out of time before any plan was found; nothing is said of whether there is one.",
    };

    public static string Headline(PlanObjective objective, PlanStatus status, Money total, DateOnly readyOn, IReadOnlyList<BuildLine> lines, bool keepsAsWished)
    {
        var what = (status, objective) switch
        {
            (PlanStatus.ProvenOptimal, PlanObjective.Cheapest) => "No plan is cheaper",
            (PlanStatus.ProvenOptimal, PlanObjective.Soonest) => "No plan is sooner",
            (PlanStatus.ProvenOptimal, PlanObjective.Surest) => "No plan is surer",
            (PlanStatus.ProvenOptimal, _) => "No plan keeps more of the donor",
            (PlanStatus.StoppedByYou, _) => "Stopped by you; the best found until then",
            _ => "Best found, not proven",
        };
        what = keepsAsWished ? what.Replace("No plan ", "No plan that keeps what you wish to keep ", StringComparison.Ordinal) : what;
        var unproven = lines.Count(line => line.Unproven);
        var trust = unproven == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"; {unproven} {(unproven == 1 ? "line is" : "lines are")} taken on trust");
        return string.Create(CultureInfo.InvariantCulture, $"{what}: {total.Amount} {total.Currency}, ready on {readyOn:yyyy-MM-dd}{trust}.");
    }

    /// <summary>How much better a plan could still be; null where it is proven.</summary>
    public static string? Gap(BuildTerms terms, PlanObjective objective, PlanSolution solution) => solution.Status == PlanStatus.ProvenOptimal ? null
        : objective switch
        {
            PlanObjective.Soonest => string.Create(CultureInfo.InvariantCulture, $"no plan is ready before day {solution.Bound}; this one is on day {solution.Totals.Days}"),
            PlanObjective.Cheapest => $"no plan costs less than {terms.Say(solution.Bound)}; this one costs {terms.Say(solution.Totals.Cost)}",
            PlanObjective.MostKept => string.Create(CultureInfo.InvariantCulture, $"no plan keeps more than {solution.Bound}; this one keeps {solution.Totals.Kept}"),
            _ => "a surer plan is not ruled out",
        };

    /// <summary>What the grades cost, from the cheapest to the dearest.</summary>
    public static string Range(PlanRun run, Candidate graded, int toBuy)
    {
        var onlyNew = run.Terms.At(graded.Position).OnlyNew;
        var prices = graded.Parts.Select(part => (part.Number, Price: GradePrices.CheapestPiece(run.Screen, part.Id, onlyNew))).ToList();
        var known = prices.Where(grade => grade.Price is not null).Select(grade => (long)Math.Round((grade.Price ?? 0) * (toBuy > 0 ? toBuy : graded.Pieces ?? 1), MidpointRounding.ToEven)).ToList();
        var missing = prices.Where(grade => grade.Price is null).Select(grade => grade.Number).ToList();
        var range = known.Count == 0 ? "not known" : known.Min() == known.Max()
            ? run.Terms.Say(known[0])
            : $"{run.Terms.MoneyOf(known.Min()).Amount} … {run.Terms.Say(known.Max())}";
        return $"{range}, by grade; counted at the dearest{(missing.Count > 0 ? $"; nobody sells {FitWording.List(missing)}" : "")}";
    }
}

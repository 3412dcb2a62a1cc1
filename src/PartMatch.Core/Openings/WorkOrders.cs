using PartMatch.Core.Builds;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Openings;

/// <summary>What the plan of a build comes to at the bench: the order of work, and what is weak while it lies open.</summary>
public static class WorkOrders
{
    /// <inheritdoc cref="BuildPlanner.Plan"/>
    public static BuildWorkOrder Order(
        BuildFacts facts, Build build, int version, PlanObjective objective, DateOnly today, PlanEffort effort, FitMemory memory, CancellationToken stop = default)
    {
        var question = new BuildQuestion(facts, build, version, objective, today, effort, memory, stop);
        return WorkOrder.Of(question.Run, question.Solved, question.Read(question.Solved));
    }

    /// <inheritdoc cref="BuildPlanner.Plan"/>
    public static BuildWeakPoints WhileOpen(
        BuildFacts facts, Build build, int version, PlanObjective objective, DateOnly today, PlanEffort effort, FitMemory memory, CancellationToken stop = default)
    {
        var question = new BuildQuestion(facts, build, version, objective, today, effort, memory, stop);
        if (!question.HasPlan)
        {
            return new BuildWeakPoints(question.Asked, question.Solved.Solution.Status, PlanWords.NoPlan(question.Solved.Solution.Status), []);
        }

        var open = new OpenWeakPoints(question.Run, question.Solved).All();
        return new BuildWeakPoints(
            question.Asked, question.Solved.Solution.Status,
            open.Count switch
            {
                0 => "No recorded weak point lies open in this plan.",
                1 => "One recorded weak point lies open in this plan.",
                var count => FormattableString.Invariant($"{count} recorded weak points lie open in this plan."),
            },
            open);
    }
}

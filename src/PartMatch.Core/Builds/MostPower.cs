using System.Globalization;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>The most power for which injectors that can be had are enough, everything else as it is wished.</summary>
internal static class MostPower
{
    private const double WattsPerKilowatt = 1000;

    /// <param name="canHold">Is there a plan with this besides, where no power is asked for?</param>
    /// <returns>"; at most 225 kW, with harl:I-5501", or nothing where none of them is rated so that it can be told.</returns>
    public static string Say(PlanRun run, Func<Func<WrittenPlan, PlanProblem>, bool> canHold)
    {
        var sized = InjectorGoals.Size(run.Terms);
        var enough = run.Candidates.SelectMany(choices => choices).Where(one => InjectorGoals.Sets(run.Terms, one.Position) && one is { IsNothing: false, Parts.Count: 1 })
            .Select(one => (Candidate: one, Power: sized.GetValueOrDefault(one.Parts[0].Id)?.PowerAtDuty?.Low))
            .Where(one => one.Power >= WattsPerKilowatt)
            .OrderByDescending(one => one.Power).ThenBy(one => one.Candidate.Key, StringComparer.Ordinal);
        foreach (var (candidate, power) in enough)
        {
            if (canHold(written => Otherwise.Force(written, candidate.Position, one => one.IsSameAs(candidate))))
            {
                return string.Create(
                    CultureInfo.InvariantCulture, $"; at most {Math.Floor(power!.Value / WattsPerKilowatt)} kW as it is wished, with {LineChanges.Say(candidate)}"); // filtered above
            }
        }

        return "";
    }
}

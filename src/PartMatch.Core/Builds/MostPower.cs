using System.Globalization;
using PartMatch.Core.Injectors;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>The most power for which injectors that can be had are enough, everything else as it is wished.</summary>
internal static class MostPower
{
    private const double WattsPerKilowatt = 1000;

    /// <param name="couldHold">Could there be a plan of the build with this besides, whatever power it is for?</param>
    /// <param name="canHold">Is there a plan of this build, with this besides?</param>
    /// <returns>"; at most 225 kW, with harl:I-5501", or nothing where none of them is rated so that it can be told.</returns>
    public static string Say(
        PlanRun run, Func<Func<WrittenPlan, PlanProblem>, bool> couldHold, Func<PlanRun, Func<WrittenPlan, PlanProblem>, bool> canHold, CancellationToken stop)
    {
        var goal = InjectorGoals.QuestionOf(run.Terms)?.Power is { } asked ? (double)(asked.High ?? asked.Value) : 0;
        var sized = InjectorGoals.Size(run.Terms);
        var position = InjectorFits.FindPosition(run.Terms.Facts.Family)?.Code ?? "";
        var enough = run.Candidates.SelectMany(choices => choices).Where(one => InjectorGoals.Sets(run.Terms, one.Position) && one is { IsNothing: false, Parts.Count: 1 })
            .Select(one => (Candidate: one, Power: sized.GetValueOrDefault(one.Parts[0].Id)?.PowerAtDuty?.Low))
            .Where(one => one.Power >= WattsPerKilowatt && one.Power < goal)
            .OrderByDescending(one => one.Power).ThenBy(one => one.Candidate.Key, StringComparer.Ordinal).ToArray();

        // With whatever power, and whether they are enough for it or nobody knows: what cannot be then cannot be for less either.
        bool Could(IReadOnlyList<(Candidate Candidate, double? Power)> some) => couldHold(written =>
            Otherwise.Force(written with { Problem = Otherwise.OnTrust(written, position) }, position, one => some.Any(other => one.IsSameAs(other.Candidate))));
        for (var from = 0; from < enough.Length && !stop.IsCancellationRequested && Could(enough[from..]); from++)
        {
            from += FirstThatCould(enough.Length - from, count => Could(enough[from..(from + count)]));
            var (candidate, power) = enough[from];

            // What is not sure to be enough for the goal is enough for less: the whole question is asked with less.
            var kilowatts = Math.Floor(power!.Value / WattsPerKilowatt); // filtered above
            var less = run.Where(build => build with { Goal = build.Goal! with { Power = string.Create(CultureInfo.InvariantCulture, $"{kilowatts} kW") } }); // it names the power
            if (canHold(less, written => Otherwise.Force(written, candidate.Position, one => one.IsSameAs(candidate))))
            {
                return string.Create(CultureInfo.InvariantCulture, $"; at most {kilowatts} kW as it is wished, with {LineChanges.Say(candidate)}");
            }
        }

        return "";
    }

    /// <summary>Of so many, all of which together could, the first that could: by halves.</summary>
    private static int FirstThatCould(int count, Func<int, bool> couldFirst)
    {
        var (none, some) = (0, count);
        while (some - none > 1)
        {
            var middle = (none + some) / 2;
            (none, some) = couldFirst(middle) ? (none, middle) : (middle, some);
        }

        return some - 1;
    }
}

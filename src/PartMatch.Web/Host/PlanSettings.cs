using System.Globalization;
using PartMatch.Core.Planning;

namespace PartMatch.Web.Host;

/// <summary>How much the planning of builds may take of the machine.</summary>
internal sealed class PlanSettings
{
    private const string EffortName = "PartMatch:PlanEffort";
    private const string AtOnceName = "PartMatch:PlansAtOnce";
    private const double MostEffort = 3600;
    private const int MostAtOnce = 64;

    public PlanSettings(IConfiguration configuration)
    {
        var (effort, atOnce) = (configuration[EffortName], configuration[AtOnceName]);
        if (!string.IsNullOrWhiteSpace(effort))
        {
            if (double.TryParse(effort, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var work) && work is > 0 and <= MostEffort)
            {
                Effort = new PlanEffort(work);
            }
            else
            {
                Refusal = $"{EffortName} is '{effort}', expected a number above 0 and at most {MostEffort}; {PlanEffort.Ordinary.Work} when left out.";
            }
        }

        if (!string.IsNullOrWhiteSpace(atOnce))
        {
            if (int.TryParse(atOnce, NumberStyles.None, CultureInfo.InvariantCulture, out var plans) && plans is >= 1 and <= MostAtOnce)
            {
                AtOnce = plans;
            }
            else
            {
                Refusal ??= $"{AtOnceName} is '{atOnce}', expected a whole number from 1 to {MostAtOnce}; {AtOnce} when left out.";
            }
        }

        // A question of several searches takes no more of the machine than so many questions.
        Effort = Effort with { AtOnce = int.Min(AtOnce, Environment.ProcessorCount) };
    }

    /// <summary>What one question may cost.</summary>
    public PlanEffort Effort { get; } = PlanEffort.Ordinary;

    /// <summary>How many questions are worked out at the same time.</summary>
    public int AtOnce { get; } = 2;

    /// <summary>How long a question waits for its turn; a page asks several at once.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>The sentence that says which setting cannot be; null where all can.</summary>
    public string? Refusal { get; }
}

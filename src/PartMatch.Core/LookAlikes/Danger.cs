using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.LookAlikes;

/// <summary>How dangerous a look-alike is, mildest first.</summary>
public enum DangerLevel
{
    None,
    Low,
    Medium,
    High,
}

/// <summary>Danger = ease × harm: how easily two parts are taken for one another, and how bad the mix-up is.</summary>
/// <remarks>
/// Ours, no source; answers show it with its two factors. A part that goes on and silently runs differently outranks one that does not fit,
/// because the latter is caught on the bench.
/// </remarks>
public static class Danger
{
    /// <summary>
    /// 3 near in number and the same to the eye; 2 the same to the eye, or near by look-alike characters only; 1 otherwise near. One more where the one was
    /// delivered in place of the other: then it is no longer a guess.
    /// </summary>
    /// <param name="near">How near the numbers are; null when only the eye found it.</param>
    /// <param name="cameInstead">Was the one delivered in place of the other?</param>
    public static int Ease(NearNumber? near, bool sameToTheEye, bool cameInstead = false) => (cameInstead ? 1 : 0) + (near, sameToTheEye) switch
    {
        (not null, true) => 3,
        (null, true) or ({ FoldedEdits: 0 }, _) => 2,
        _ => 1,
    };

    /// <summary>Harm of finding the wrong part at one place.</summary>
    /// <param name="consequence">The worst consequence among the unmet relations; null when none is unmet.</param>
    /// <returns>0 to 5; where the part fits there is no harm, whatever the consequence.</returns>
    public static int Harm(Headline headline, Consequence? consequence)
    {
        var misfit = headline switch
        {
            Headline.MountsButRunsDifferently => 4,
            Headline.NotKnownYet => NotKnownHarm,
            Headline.DoesNotFit => 2,
            Headline.FitsWithWork => 1,
            _ => 0,
        };
        return misfit > 0 && consequence is Consequence.Damage or Consequence.Injury ? misfit + 1 : misfit;
    }

    /// <summary>Harm of a part that runs right only once it is set: who takes it for the right one sets nothing.</summary>
    public static int HarmUnset(Headline headline, Consequence? consequence) =>
        Harm(headline == Headline.FitsWithWork ? Headline.MountsButRunsDifferently : headline, consequence);

    /// <summary>Harm where nothing can be judged: neither part is fitted anywhere.</summary>
    public const int NotKnownHarm = 3;

    /// <summary>The largest harm there is.</summary>
    public const int WorstHarm = 5;

    public static DangerLevel Level(int ease, int harm) => (ease * harm) switch
    {
        >= 8 => DangerLevel.High,
        >= 4 => DangerLevel.Medium,
        >= 1 => DangerLevel.Low,
        _ => DangerLevel.None,
    };
}

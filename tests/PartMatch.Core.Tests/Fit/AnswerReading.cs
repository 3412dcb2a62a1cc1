using PartMatch.Core.Fit;
using Xunit;

namespace PartMatch.Core.Tests.Fit;

/// <summary>What tests look for in an answer.</summary>
internal static class AnswerReading
{
    /// <summary>The one reason that this feature, joint, stack or companion rule gave.</summary>
    public static Reason Of(this FitAnswer answer, string featureOrCode) =>
        Assert.Single(answer.Reasons, reason => reason.By != ReasonBy.Identity && (reason.Code ?? reason.Feature) == featureOrCode);

    public static IEnumerable<Reason> By(this FitAnswer answer, ReasonBy by) => answer.Reasons.Where(reason => reason.By == by);

    public static string[] Positions(this IEnumerable<CompanionChange> changes) => [.. changes.Select(change => change.Position)];

    /// <summary>Everything a person reads in the answer.</summary>
    public static string AllText(this FitAnswer answer) => string.Join('\n', [answer.HeadlineText, .. answer.Reasons.Select(reason => reason.Text)]);
}

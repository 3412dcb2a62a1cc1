namespace PartMatch.Core.Identification;

/// <summary>Once round the engine: at each position the check that says most.</summary>
internal static class WalkRound
{
    /// <returns>Empty for parts by themselves.</returns>
    public static IReadOnlyList<WalkRoundStop> Of(IdentificationSubject subject, Observable[] splitting, ulong possible) =>
    [
        .. splitting.Where(one => one.Position is not null).GroupBy(one => one.Position?.Code, StringComparer.Ordinal)
            // The checks come cheapest first, so of those that split equally well the cheapest is taken.
            .Select(here => here.MaxBy(one => one.AsTest().AnswersAmong(possible).Count)!) // a group is never empty
            .OrderBy(one => one.Minutes).ThenBy(one => one.Position?.Code, StringComparer.Ordinal)
            .Select(one => new WalkRoundStop(
                one.Position?.Code ?? "", one.Position?.Name ?? "", one.Shown(),
                [.. one.AnswersAmong(possible).Select(answer => new WalkRoundAnswer(answer.Text, answer.Seen, subject.CodesOf(answer.Candidates)))])),
    ];
}

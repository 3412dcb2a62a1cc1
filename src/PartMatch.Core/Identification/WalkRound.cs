namespace PartMatch.Core.Identification;

/// <summary>Once round the engine: at each position the check that says most.</summary>
internal static class WalkRound
{
    /// <summary>Over every variant asked about, ruled out or not: a part of another is found only by whoever still looks for it.</summary>
    /// <returns>Empty for parts by themselves.</returns>
    public static IReadOnlyList<WalkRoundStop> Of(IdentificationSubject subject, Observable[] allowed) =>
    [
        .. allowed.Where(one => one.Position is not null && one.Answers.Count > 1).GroupBy(one => one.Position?.Code, StringComparer.Ordinal)
            // The checks come cheapest first, so of those that split equally well the cheapest is taken.
            .Select(here => here.MaxBy(one => one.Answers.Count)!) // a group is never empty
            .OrderBy(one => one.Minutes).ThenBy(one => one.Position?.Code, StringComparer.Ordinal)
            .Select(one => new WalkRoundStop(
                one.Position?.Code ?? "", one.Position?.Name ?? "", one.Shown(),
                [.. one.Answers.Select(answer => new WalkRoundAnswer(answer.Text, answer.Seen, subject.CodesOf(answer.Candidates)))])),
    ];
}

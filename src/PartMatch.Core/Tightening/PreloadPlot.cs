using PartMatch.Core.Plots;

namespace PartMatch.Core.Tightening;

/// <summary>The pull of each judged torque as a share of the proof load, on threads as told and in the states to compare.</summary>
public static class PreloadPlot
{
    private const double Percent = 100;

    /// <returns>Null where no torque is judged: there is nothing to draw.</returns>
    public static Plot? Of(TighteningJudged answer)
    {
        List<(string Name, JudgedTorque Judged)> torques =
        [
            .. answer.Torque is { } typed ? [("as asked", typed)] : Array.Empty<(string, JudgedTorque)>(),
            .. answer.Records.Select((one, index) => (Name: $"record {index + 1}", one.Judged)).Where(one => one.Judged is not null)
                .Select(one => (one.Name, one.Judged!)), // the line before leaves no null
        ];
        if (answer.Bolt is not { } bolt || torques.Count == 0)
        {
            return null;
        }

        return new RowPlot(
            "Preload as a share of the proof load",
            "Each bar runs from the least to the greatest pull with its scatter, and is divided at the expected one; faint bars are states of the threads to "
            + "compare. " + string.Join("; ", torques.Select(one => $"{one.Name}, {one.Judged.Torque.Text}, {one.Judged.Conditions[0].Text}")) + ".",
            new PlotAxis("Share of the proof load", "%", 0),
            [.. torques.SelectMany(one => one.Judged.Conditions.Select(state => Row($"{one.Name}, {one.Judged.Torque.Text}, {Words(state)}", state)))],
            [
                new PlotLimit(PlotDirection.Upright, Percent, "proof load"),
                new PlotLimit(PlotDirection.Upright, Percent * bolt.UltimateLoad.Expected / bolt.ProofLoad.Expected, "least breaking load"),
            ],
            new PlotTable(
                ["Torque", "Value", "Threads", "Preload", "Share of the proof load"],
                [
                    .. torques.SelectMany(one => one.Judged.Conditions.Select(IReadOnlyList<string> (state) =>
                        [one.Name, one.Judged.Torque.Text, Words(state), state.Preload.Text, state.ShareOfProof.Text])),
                ]));
    }

    private static PlotRow Row(string name, TightenedAs state)
    {
        var share = state.ShareOfProof;
        return new PlotRow(
            name,
            [
                new PlotBar(Percent * share.Low, Percent * share.Expected, share.Text) { IsFaint = !state.IsTold },
                new PlotBar(Percent * share.Expected, Percent * share.High, "") { IsFaint = !state.IsTold },
            ]);
    }

    private static string Words(TightenedAs state) => state.Threads switch
    {
        "not-recorded" => "threads not recorded",
        "given" => "nut factor as given",
        var code => code,
    };
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Tightening.TighteningText;

namespace PartMatch.Core.Tightening;

/// <summary>What one torque does to a bolt whose threads are as told, and what it would do dry and oiled.</summary>
internal sealed class TorqueJudgement(Bolt bolt, double scatter)
{
    private sealed record State(string Code, string Words, bool IsTold, Figure NutFactor);

    /// <param name="told">The state of the threads as recorded or typed; null when nobody says.</param>
    /// <param name="givenFactor">A typed nut factor; it stands for the state.</param>
    public JudgedTorque Of(QuantityRange torque, Lubrication? told, QuantityRange? givenFactor = null)
    {
        var sums = States(told, givenFactor)
            .Select(state => (State: state, Sum: new PreloadSum(bolt.Thread, bolt.Loads, Spread.Of(torque), state.NutFactor, scatter))).ToList();
        var main = sums[0];
        return new JudgedTorque(
            torque,
            [.. sums.Select(one => Shown(one.State, one.Sum))],
            main.Sum.Influences,
            [.. InNewtons(torque), .. sums.SelectMany(one => one.Sum.Working(one.State.Words))],
            [
                .. TighteningWarnings.Of(
                    bolt, torque, [.. sums.Select(one => (one.State.Words, one.State.IsTold, one.Sum))], told is null && givenFactor is null),
            ]);
    }

    private static IEnumerable<State> States(Lubrication? told, QuantityRange? givenFactor)
    {
        if (givenFactor is not null)
        {
            yield return new State("given", "with the nut factor given", true, new Figure(Spread.Of(givenFactor), "given in the question"));
        }
        else if (told is null)
        {
            yield return new State("not-recorded", "threads not recorded", true, NutFactors.OfUnknown);
        }
        else
        {
            yield return Of(told.Value, true);
        }

        foreach (var compared in new[] { Lubrication.Dry, Lubrication.Oiled }.Where(one => givenFactor is not null || one != told))
        {
            yield return Of(compared, false);
        }
    }

    private static State Of(Lubrication lubrication, bool isTold)
    {
        var words = lubrication switch
        {
            Lubrication.Other => "threads in another state",
            var other => Codes.Of(other),
        };
        return new State(Codes.Of(lubrication), words, isTold, NutFactors.Of(lubrication));
    }

    private static TightenedAs Shown(State state, PreloadSum sum)
    {
        var (preload, proof) = (sum.Preload, sum.ShareOfProof);
        return new TightenedAs(
            state.Code, state.IsTold, sum.NutFactor.Spread.In(Ratio, "0.00#"), sum.NutFactor.Source, preload.In(Kilonewtons, "0.0"),
            proof.In(SumText.Percent, "0"), sum.ShareOfUltimate.In(SumText.Percent, "0"),
            $"{state.Words}: {SumText.In(Kilonewtons, preload.Expected, "0.0")}, {Share(proof.Expected)} of the proof load, "
            + $"from {Share(proof.Low)} to {Share(proof.High)}");
    }

    private static IEnumerable<WorkingStep> InNewtons(QuantityRange torque)
    {
        var inNewtonMetres = Spread.Of(torque).In(NewtonMetres, "0.##").Text;
        return torque.Text == inNewtonMetres || torque.Text.EndsWith(NewtonMetres.Symbol, StringComparison.Ordinal)
            ? []
            : [new WorkingStep("torque in N·m", "by the factor of its unit", torque.Text, inNewtonMetres, "1 lbf·ft = 1.355 817 948 N·m, NIST SP 811")];
    }
}

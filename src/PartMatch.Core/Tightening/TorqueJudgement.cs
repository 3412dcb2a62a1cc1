using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Tightening.TighteningText;

namespace PartMatch.Core.Tightening;

/// <summary>What one torque does to a bolt whose threads are as told, and what it would do dry and oiled.</summary>
internal sealed class TorqueJudgement(Bolt bolt, double scatter)
{
    private const string NotRecorded = "not-recorded";

    private sealed record State(string Code, string Words, bool IsTold, Figure NutFactor);

    /// <summary>A typed torque, on threads as typed.</summary>
    public JudgedTorque OfTyped(QuantityRange torque, TighteningQuestion question) => question.NutFactor is { } given
        ? Of(torque, [Given(given, isTold: true), .. Compared(null, null)])
        : Of(torque, [Told(question.Lubrication), .. Compared(question.Lubrication, null)]);

    /// <summary>A recorded torque, on threads as its source wants them; threads and nut factor that are typed are compared with.</summary>
    /// <param name="told">Null when the source does not say.</param>
    public JudgedTorque OfRecord(QuantityRange torque, Lubrication? told, TighteningQuestion question) =>
        Of(torque,
        [
            Told(told), .. question.NutFactor is { } given ? [Given(given, isTold: false)] : Array.Empty<State>(), .. Compared(told, question.Lubrication),
        ]);

    private JudgedTorque Of(QuantityRange torque, IReadOnlyList<State> states)
    {
        var sums = states
            .Select(state => (State: state, Sum: new PreloadSum(bolt.Thread, bolt.Loads, Spread.Of(torque), state.NutFactor, scatter))).ToList();
        return new JudgedTorque(
            torque,
            [.. sums.Select(one => Shown(one.State, one.Sum))],
            sums[0].Sum.Influences,
            [.. InNewtons(torque), .. sums.SelectMany(one => one.Sum.Working(one.State.Words))],
            [
                .. TighteningWarnings.Of(
                    bolt, torque, [.. sums.Select(one => (one.State.Words, one.State.IsTold, one.Sum))], states[0].Code == NotRecorded),
            ]);
    }

    private static State Told(Lubrication? lubrication) =>
        lubrication is { } known ? Of(known, isTold: true) : new State(NotRecorded, "threads not recorded", true, NutFactors.OfUnknown);

    private static State Given(QuantityRange factor, bool isTold) =>
        new("given", "with the nut factor given", isTold, new Figure(Spread.Of(factor), "given in the question"));

    // A builder who only knows "dry" and "oiled" finds both, whatever the source wants.
    private static IEnumerable<State> Compared(Lubrication? told, Lubrication? asked) =>
        new Lubrication?[] { Lubrication.Dry, Lubrication.Oiled, asked }.Distinct().OfType<Lubrication>().Where(one => one != told)
            .Select(one => Of(one, isTold: false));

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
        var torsion = sum.ShareWithTorsion.In(SumText.Percent, "0");
        var shown = new TightenedAs(
            state.Code, state.IsTold, sum.Factor.In(Ratio, FactorFormat), sum.FactorSource, preload.In(Kilonewtons, "0.0"),
            proof.In(SumText.Percent, "0"), sum.ShareOfUltimate.In(SumText.Percent, "0"),
            $"{state.Words}: {SumText.In(Kilonewtons, preload.Expected, "0.0")}, {Share(proof.Expected)} of the proof load, "
            + $"from {Share(proof.Low)} to {Share(proof.High)}; twisted while it is tightened, {Share(sum.ShareWithTorsion.Expected)} of the proof stress")
        {
            ShareWithTorsion = torsion,
        };
        return sum.ShareOfUltimate.Expected > 1 ? Broken(shown, state, sum) : shown;
    }

    /// <summary>No bolt pulls more than what breaks it: no number beyond that is shown.</summary>
    private static TightenedAs Broken(TightenedAs shown, State state, PreloadSum sum)
    {
        var breaking = SumText.In(Kilonewtons, sum.Loads.Ultimate.Expected, "0.0");
        static QuantityRange Beyond(QuantityRange range) => range with { Text = "beyond breaking" };
        return shown with
        {
            Breaks = true,
            Preload = shown.Preload with { Text = $"breaks: {breaking} at the least does it" },
            ShareOfProof = Beyond(shown.ShareOfProof),
            ShareOfUltimate = Beyond(shown.ShareOfUltimate),
            ShareWithTorsion = Beyond(shown.ShareWithTorsion),
            Text = $"{state.Words}: more than the {breaking} that break it at the least: the bolt breaks",
        };
    }

    private static IEnumerable<WorkingStep> InNewtons(QuantityRange torque)
    {
        var inNewtonMetres = Spread.Of(torque).In(NewtonMetres, "0.##").Text;
        return torque.Text == inNewtonMetres || torque.Text.EndsWith(NewtonMetres.Symbol, StringComparison.Ordinal)
            ? []
            : [new WorkingStep("torque in N·m", "by the factor of its unit", torque.Text, inNewtonMetres, "1 lbf·ft = 1.355 817 948 N·m, NIST SP 811")];
    }
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Tightening;

/// <summary>What one source says of a fastener of one stretch of engines: its passes in order, at least one.</summary>
internal sealed record TorqueSource(Evidence Evidence, Span Span, IReadOnlyList<TorquePass> Passes)
{
    /// <summary>Those before the last torque are steps on the way; what follows it are angles.</summary>
    private IReadOnlyList<TorquePass> Decisive => [.. Passes.Skip(Math.Max(Passes.ToList().FindLastIndex(pass => !IsAngle(pass)), 0))];

    /// <summary>What the fastener ends with: "70 N·m ± 5", or "30 N·m, then 90 deg".</summary>
    public string EndText => string.Join(", then ", Decisive.Select(pass => TextOf(pass.Turn)));

    public static IReadOnlyList<TorqueSource> At(FamilyFacts facts, string variant, string position) =>
        [.. facts.TorquesAt(variant, position).GroupBy(pass => (pass.Evidence, pass.Span)).Select(source => new TorqueSource(
            source.Key.Evidence, source.Key.Span, [.. source.OrderBy(pass => pass.Pass)]))];

    /// <summary>Those that count and end differently from another of the same engines: in another torque, or another angle after it. Empty where they agree.</summary>
    public static IReadOnlyList<TorqueSource> FindDisagreeing(FamilyFacts facts, string variant, string position)
    {
        var counting = At(facts, variant, position).Where(source => !source.Evidence.IsRetracted).ToList();
        return [.. counting.Where(one => counting.Exists(other => Overlap(one.Span, other.Span) && !one.AgreesWith(other)))];
    }

    public static string TextOf(QuantityReading turn) => (turn.Minus, turn.Plus) switch
    {
        (null or 0, null or 0) => turn.Text,
        var (minus, plus) when minus == plus => $"{turn.Text} ± {SumText.Number((double)((plus ?? 0) / turn.Unit.Factor), "0.##")}",
        _ => RangeOf(turn).Text,
    };

    public static QuantityRange RangeOf(QuantityReading turn) => new Spread(
        (double)(turn.Value - (turn.Minus ?? 0)), (double)turn.Value, (double)(turn.Value + (turn.Plus ?? 0))).In(turn.Unit, "0.##");

    private static bool IsAngle(TorquePass pass) => pass.Turn.Unit.Dimension == Dimension.Angle;

    private bool AgreesWith(TorqueSource other) => Meet(End(isAngle: false), other.End(isAngle: false)) && Meet(End(isAngle: true), other.End(isAngle: true));

    /// <summary>Of the torque, or of all the angles after it together; null where there is none.</summary>
    private (decimal Low, decimal High)? End(bool isAngle)
    {
        var turns = Decisive.Where(pass => IsAngle(pass) == isAngle).Select(pass => pass.Turn).ToList();
        return turns.Count == 0 ? null : (turns.Sum(turn => turn.Value - (turn.Minus ?? 0)), turns.Sum(turn => turn.Value + (turn.Plus ?? 0)));
    }

    private static bool Meet((decimal Low, decimal High)? one, (decimal Low, decimal High)? other) => (one, other) switch
    {
        (null, null) => true,
        ({ } first, { } second) => first.Low <= second.High && second.Low <= first.High,
        _ => false,
    };

    private static bool Overlap(Span one, Span other) =>
        (one.BuiltFrom is null || other.BuiltTo is null || one.BuiltFrom.First <= other.BuiltTo.Last)
        && (other.BuiltFrom is null || one.BuiltTo is null || other.BuiltFrom.First <= one.BuiltTo.Last)
        && (one.SerialFrom is null || other.SerialTo is null || one.SerialFrom <= other.SerialTo)
        && (other.SerialFrom is null || one.SerialTo is null || other.SerialFrom <= one.SerialTo);
}

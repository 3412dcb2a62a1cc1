using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>Events in words.</summary>
internal static class TimingText
{
    public const string Convention =
        "Degrees of the crank. Intake opens before top dead centre and closes after bottom dead centre; exhaust opens before bottom dead centre and closes "
        + "after top dead centre. "
        + "A negative number lies on the other side of its dead centre. Advance is earlier, retard is later, whichever way the camshaft turns.";

    private const string Top = "top dead centre";
    private const string Bottom = "bottom dead centre";

    public static string Code(Valve valve) => valve == Valve.Intake ? "intake" : "exhaust";

    public static QuantityRange IntakeOpens(Spread degrees) => GeometryText.RangeFromDeadCentre(degrees, "before", "after", Top);

    public static QuantityRange IntakeCloses(Spread degrees) => GeometryText.RangeFromDeadCentre(degrees, "after", "before", Bottom);

    public static QuantityRange ExhaustOpens(Spread degrees) => GeometryText.RangeFromDeadCentre(degrees, "before", "after", Bottom);

    public static QuantityRange ExhaustCloses(Spread degrees) => GeometryText.RangeFromDeadCentre(degrees, "after", "before", Top);

    public static QuantityRange Opens(Valve valve, Spread degrees) => valve == Valve.Intake ? IntakeOpens(degrees) : ExhaustOpens(degrees);

    public static QuantityRange Closes(Valve valve, Spread degrees) => valve == Valve.Intake ? IntakeCloses(degrees) : ExhaustCloses(degrees);

    public static QuantityRange Centre(Valve valve, Spread degrees) => valve == Valve.Intake
        ? GeometryText.RangeFromDeadCentre(degrees, "after", "before", Top)
        : GeometryText.RangeFromDeadCentre(degrees, "before", "after", Top);

    /// <summary>A shift in words: <c>17.1° advanced</c>.</summary>
    public static QuantityRange Advance(Spread degrees) => degrees switch
    {
        { Low: 0, High: 0 } => GeometryText.RangeInDegrees(degrees),
        { Low: >= 0 } => GeometryText.RangeInDegrees(degrees, " advanced"),
        { High: <= 0 } => GeometryText.RangeInDegrees(degrees) with
        {
            Text = GeometryText.RangeInDegrees(new Spread(-degrees.High, -degrees.Expected, -degrees.Low), " retarded").Text,
        },
        _ => GeometryText.RangeInDegrees(degrees, " advanced (minus = retarded)"),
    };

    /// <summary>How an event is written.</summary>
    /// <param name="what"><c>opens</c> or <c>closes</c>.</param>
    public static string Expected(Valve valve, string what)
    {
        var centre = valve == Valve.Intake == (what == "opens") ? Top : Bottom;
        return what == "opens" ? $"degrees of the crank before {centre}, negative = after" : $"degrees of the crank after {centre}, negative = before";
    }

    /// <summary>A difference in words: <c>96° earlier</c>.</summary>
    /// <param name="earlier">Degrees; negative = later.</param>
    public static string Earlier(double earlier) => $"{GeometryText.InDegrees(Math.Abs(earlier), "0.#")} {(earlier > 0 ? "earlier" : "later")}";
}

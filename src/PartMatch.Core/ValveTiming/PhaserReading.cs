using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>Does the wheel on a camshaft move it, and from where?</summary>
internal static class PhaserReading
{
    /// <returns>The phaser, fixed where none is known; and whether it may move all the same, because nobody recorded how.</returns>
    public static (Phaser Phaser, bool MayMove) Of(FamilyFacts facts, IReadOnlyList<Part> wheels, QuantityRange? givenRange = null,
        PhaserRest? givenRest = null)
    {
        var range = LookedUp.Typed(givenRange) ?? LookedUp.Feature(wheels, "phaser-range");
        var rest = givenRest ?? (wheels.Count > 0 && ValueSelection.Of(wheels[0], "rest") is StatedChoices { Choices: [var word] }
            ? Codes.Find<PhaserRest>(word) : null);
        if (range.Figure is { Spread: { High: > 0 } travel } && rest is { } known)
        {
            return (new Phaser(travel, known), false);
        }

        // A kind of wheel that has no such feature is a plain sprocket; one that has it and says nothing is not known.
        var couldMove = wheels.Any(wheel => facts.FindKind(wheel.Kind)?.FindFeature("phaser-range") is not null);
        return (Phaser.Fixed, couldMove && (range.Figure is null || range.Figure.Spread.High > 0));
    }
}

using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Consistency;

/// <summary>Values that look like a slip of the unit, the decimal point or the sign: no other part of the kind comes near.</summary>
internal static class FarOffValues
{
    // Ours, no source: under the 25.4 between inches and millimetres, and over what parts of one kind in one family differ by.
    private const decimal Factor = 10;

    // Ours, no source: fewer tell nothing of what is usual.
    private const int OthersAtLeast = 3;

    public static IEnumerable<Fault> Find(FamilyFacts facts, FittedPlaces places)
    {
        var rows = new FaultRows(facts);
        foreach (var kind in facts.Parts.GroupBy(part => part.Kind, StringComparer.Ordinal))
        {
            var features = kind.SelectMany(part => part.Values).Select(value => value.Feature).Distinct(StringComparer.Ordinal);
            foreach (var feature in features.Order(StringComparer.Ordinal))
            {
                (Part Part, StatedQuantity Value)[] known =
                [
                    .. kind.SelectMany(part => ValueSelection.Of(part, feature) is StatedQuantity value ? [(part, value)] : Array.Empty<(Part, StatedQuantity)>()),
                ];
                foreach (var (part, value) in known)
                {
                    StatedQuantity[] others = [.. known.Where(one => one.Part.Id != part.Id).Select(one => one.Value).OrderBy(other => other.Nominal)];
                    if (others.Length < OthersAtLeast || !IsFarOff(value, others))
                    {
                        continue;
                    }

                    var name = FaultWords.FeatureName(facts.FindKind(kind.Key), feature);
                    var many = others.Length.ToString(CultureInfo.InvariantCulture);
                    yield return new Fault(
                        FaultSort.ValueFarOff, $"{part.Name} {part.Number}: {name} is far from that of every other part of its kind",
                        $"{FitWording.AsSentence(name)}: {FitWording.Text(value)}; "
                            + $"the {many} others have {FitWording.Text(others[0])} to {FitWording.Text(others[^1])}.",
                        places.FirstPosition(part.Id), places.VariantsOf(part.Id), [.. rows.Of(part, feature)], places.QuestionAbout(part.Id),
                        "Look at the unit, the decimal point and the sign where it was read, and correct it. Nothing is wrong where the part really is so.");
                }
            }
        }
    }

    /// <summary>Said only where the others agree on the sign. Nought is no slip of a unit.</summary>
    private static bool IsFarOff(StatedQuantity one, StatedQuantity[] others)
    {
        var (value, least, most) = (one.Nominal, others[0].Nominal, others[^1].Nominal);
        return (value, least, most) switch
        {
            (0, _, _) => false,

            // A dome beside dishes, a timing before the dead centre beside some after it.
            _ when one.Unit.Dimension is Dimension.Volume or Dimension.Angle or Dimension.Temperature && value > 0 != least > 0 => false,
            (_, > 0, _) => value < least / Factor || value > most * Factor,
            (_, _, < 0) => value > most / Factor || value < least * Factor,
            _ => false,
        };
    }
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>What follows from the kind of a part and from the place where such parts sit, whatever was measured.</summary>
internal static class KindReasons
{
    /// <summary>That a wrong one cannot change how the engine runs; that nobody has reviewed what matters of the kind.</summary>
    public static IEnumerable<Reason> Of(Kind kind, Part part)
    {
        // A wrong one cannot; of a missing one the kind says nothing.
        if (!kind.CanAlterRunning && !part.IsNothing)
        {
            yield return new Reason("", ReasonBy.Kind, Axis.Runs, Met.Yes, $"{kind.Name}: a wrong one of this kind cannot change how the engine runs.");
        }

        if (!kind.Reviewed)
        {
            yield return new Reason(
                "", ReasonBy.Kind, Axis.Mounts, Met.NotKnown,
                $"{kind.Name}: the list of features that matter has not been reviewed; at best, nothing recorded speaks against it.");
        }
    }

    /// <summary>Where the position is chosen by measurement: that it is, and for which reading the part is the grade; none for other positions.</summary>
    public static IEnumerable<Reason> ChosenByMeasurement(FamilyFacts facts, FitQuestion question, Part part, Position position)
    {
        SelectRow[] table = [.. facts.Selects.Where(row => row.Position == question.Position && row.Evidence?.IsRetracted != true)];
        if (table.Length == 0 || part.IsNothing)
        {
            yield break;
        }

        SelectRow[] own = [.. table.Where(row => row.Part == part.Id)];
        var grades = own.Length > 0
            ? $"{part.Number} is the grade for {string.Join(" or ", own.Select(InWords))}"
            : $"{part.Number} is not in the table of grades; those are {string.Join("; ", table.Select(row => $"{row.Part} for {InWords(row)}"))}";
        yield return new Reason("", ReasonBy.Kind, Axis.Mounts, Met.NotKnown, $"{position.Name}: chosen by measurement. Measure, then order. {grades}.")
        {
            Cited = DemandReasons.EvidenceOf([], (own.Length > 0 ? own : table)[0].Evidence),
        };

        string InWords(SelectRow row)
        {
            var place = facts.FindPosition(row.Measured.Position)?.Name ?? row.Measured.Position;
            return $"{FitWording.Text(new Interval(row.From, row.To), row.Unit)} of {FitWording.InWords(row.Measured.Feature)} ({place})";
        }
    }

    /// <summary>A part of another kind than the position takes does not go on.</summary>
    public static Reason AnotherKind(FamilyFacts facts, Part part, Position position, Kind kind)
    {
        var other = facts.FindKind(part.Kind)?.Name ?? FitWording.InWords(part.Kind);
        return new Reason("", ReasonBy.Kind, Axis.Mounts, Met.No, $"{part.Number} is recorded as {other}; {position.Name} takes {kind.Name}.")
        {
            Effect = Effect.Stops,
            Cited = part.Evidence is null ? [] : [part.Evidence],
        };
    }
}

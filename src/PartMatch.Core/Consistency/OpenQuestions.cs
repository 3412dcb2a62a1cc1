using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>
/// Every question "does what one variant has at a position go on another?" of a family, asked once; kept is what each answer that is not known
/// lacks.
/// </summary>
internal sealed class OpenQuestions
{
    private readonly ILookup<Lack, Hanging> _hanging;

    /// <param name="Rooms">How wide a reading may be to decide each relation that lacks it; null where any may.</param>
    private sealed record Hanging(Lack Lack, bool Alone, string Fit, IReadOnlyList<decimal?> Rooms);

    /// <summary>What hangs on one thing.</summary>
    /// <param name="Fit">The address of a question that hangs on it, one that hangs on it alone first; null where none does.</param>
    internal sealed record Hangs(Unlocks Unlocks, string? Fit, IReadOnlyList<decimal?> Rooms);

    public OpenQuestions(FamilyFacts facts)
    {
        Hanging[] all =
        [
            .. facts.Positions.AsParallel().AsOrdered().SelectMany(position =>
                from to in facts.Variants
                from donor in facts.Variants
                where donor != to
                from hanging in Ask(facts, to, donor, position)
                select hanging),
        ];
        _hanging = all.ToLookup(hanging => hanging.Lack);
    }

    public Hangs HangingOn(Lack lack)
    {
        Hanging[] hanging = [.. _hanging[lack].OrderByDescending(one => one.Alone)];
        var alone = hanging.Count(one => one.Alone);
        return new Hangs(new Unlocks(alone, hanging.Length - alone), hanging.FirstOrDefault()?.Fit, [.. hanging.SelectMany(one => one.Rooms)]);
    }

    private static IEnumerable<Hanging> Ask(FamilyFacts facts, Variant to, Variant donor, Position position)
    {
        var address = new Permalink("/api/fit")
            .With("family", facts.Family.Code).With("variant", to.Code).With("position", position.Code).With("from", donor.Code).ToString();
        Part[] parts =
        [
            .. facts.FitmentsAt(donor.Code, position.Code).Select(fitment => fitment.Part).Distinct(StringComparer.Ordinal)
                .Select(part => part is null ? Part.Nothing(position.Kind) : facts.GetPart(part)),
        ];
        if (parts.Length == 0)
        {
            return [new Hanging(new LacksFitment(donor.Code, position.Code), Alone: true, address, [])];
        }

        // Of a part that surely does not go on, nobody needs to know how the engine would run.
        var cases = Cases(facts, to, position, parts);
        if (cases.All(one => one.Mounts.Value == Mounts.No))
        {
            return [];
        }

        var byAxis = new[] { Lacking(facts, to, position, cases, Axis.Mounts), Lacking(facts, to, position, cases, Axis.Runs) };
        return byAxis.SelectMany(axis => axis.Keys).Distinct().Where(lack => lack is not LacksMore).Select(lack => new Hanging(
            lack, byAxis.Any(axis => axis.Count == 1 && axis.ContainsKey(lack)), address,
            [.. byAxis.SelectMany(axis => axis.GetValueOrDefault(lack, []))]));
    }

    /// <summary>Each part that the donor may have, on each stretch of engines; none where all of them are what the maker fitted there anyway.</summary>
    private static IReadOnlyList<FitAnswer> Cases(FamilyFacts facts, Variant to, Position position, Part[] parts)
    {
        var question = new FitQuestion(to.Code, position.Code, null);
        Fitment[] fitted = [.. facts.FitmentsAt(to.Code, position.Code)];
        (Part Part, EngineSpan Stretch)[] cases =
        [
            .. parts.SelectMany(part => Stretches(facts, to, question, part, fitted), (part, stretch) => (part, stretch)),
        ];
        bool IsFitted((Part Part, EngineSpan Stretch) one) =>
            fitted.Any(fitment => (fitment.Part ?? Part.None) == one.Part.Id && one.Stretch.IsIn(fitment.Span));
        return cases.All(IsFitted) ? [] : [.. cases.Select(one => FitCheck.Decide(facts, AskedOf(question, one.Part, one.Stretch)))];
    }

    /// <summary>As in the answer itself: a stretch for which nothing is recorded says something only when no other stretch does.</summary>
    private static IReadOnlyList<EngineSpan> Stretches(FamilyFacts facts, Variant to, FitQuestion question, Part part, Fitment[] fitted)
    {
        var stretches = EngineSpans.Cut(to.Span, built: null, serial: null, FitCheck.SpansThatMatter(facts, question, part)).Stretches;
        EngineSpan[] recorded = [.. stretches.Where(stretch => fitted.Any(fitment => stretch.IsIn(fitment.Span)))];
        return recorded.Length > 0 ? recorded : stretches;
    }

    private static FitQuestion AskedOf(FitQuestion question, Part part, EngineSpan stretch)
    {
        var day = new BuildDate(stretch.Built.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), stretch.Built, stretch.Built);
        return question with { Part = part, Built = day, Serial = stretch.Serial };
    }

    /// <summary>What an axis lacks, with the rooms of the relations that lack it; empty where the axis is known.</summary>
    private static Dictionary<Lack, List<decimal?>> Lacking(FamilyFacts facts, Variant to, Position position, IReadOnlyList<FitAnswer> cases, Axis axis)
    {
        var lacking = new Dictionary<Lack, List<decimal?>>();
        void Add(Lack lack, params IEnumerable<decimal?> rooms)
        {
            if (!lacking.TryGetValue(lack, out var all))
            {
                lacking[lack] = all = [];
            }

            all.AddRange(rooms);
        }

        // Stretches or parts with different known answers: the serial number, or a look at the donor, has to settle it.
        var known = cases.Where(one => !IsOpen(one, axis)).Select(one => axis == Axis.Mounts ? Codes.Of(one.Mounts.Value) : Codes.Of(one.Runs.Value));
        if (known.Distinct(StringComparer.Ordinal).Count() > 1)
        {
            Add(LacksMore.Instance);
        }

        foreach (var one in cases.Where(one => IsOpen(one, axis)))
        {
            Reason[] open = [.. one.Reasons.Where(reason => reason.Axis == axis && MeasureNextAdvice.KeepsOpen(reason, one.Reasons))];
            if (open.Length == 0 || (axis == Axis.Mounts ? one.Mounts.Disputed : one.Runs.Disputed))
            {
                Add(LacksMore.Instance);
                continue;
            }

            foreach (var reason in open)
            {
                foreach (var lack in Lacks.Of(facts, to.Code, position.Code, reason))
                {
                    Add(lack, reason.Room);
                }
            }
        }

        return lacking;
    }

    private static bool IsOpen(FitAnswer answer, Axis axis) =>
        axis == Axis.Mounts ? answer.Mounts.Value == Mounts.NotKnown : answer.Runs.Value == Runs.NotKnown;
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Items;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Compression;

/// <summary>A camshaft, its wheel, a piston, head or gasket changes what the sums see: the fit answer says how, whichever way.</summary>
public static class EngineChangeInFit
{
    private static readonly string[] _timing = [Roles.IntakeCamshaft, Roles.ExhaustCamshaft, Roles.CamSprocket];
    private static readonly string[] _volumes = [Roles.Piston, Roles.Head, Roles.HeadGasket];

    /// <summary>Null where the position plays no part in these sums, or nothing is put there.</summary>
    /// <param name="part">The part judged, as the answer to <paramref name="question"/> has it.</param>
    public static EngineChange? Find(FamilyFacts facts, FitQuestion question, Part part, FitAnswer answer)
    {
        var position = facts.FindPosition(question.Position);
        if (position?.Role is not { } role || !(_timing.Contains(role) || _volumes.Contains(role)) || part.IsNothing || part.Kind != position.Kind)
        {
            return null;
        }

        // What the question puts at other positions counts for the engine that is asked about; the variant as built stays as it is.
        var there = new Dictionary<string, Part?>(question.With ?? new Dictionary<string, Part?>(), StringComparer.Ordinal)
        {
            [position.Code] = question.Item is { } item ? MeasuredPart.Of(part, item) : part,
        };
        var told = OverSpans(facts, question, position.Code, on => On(facts, question, part, answer, role, there, on));
        return Merge(told, Link(facts, question, position, part, role));
    }

    /// <summary>As the fit answer does it: every stretch that the engine can be in, each with what the maker fitted on it.</summary>
    private static List<EngineChangeOn> OverSpans(FamilyFacts facts, FitQuestion question, string position, Func<EngineSpan, EngineChangeOn> tell)
    {
        var spans = facts.Positions.Where(one => _timing.Contains(one.Role) || _volumes.Contains(one.Role))
            .SelectMany(one => facts.FitmentsAt(question.Variant, one.Code)).Select(fitment => fitment.Span).ToList();
        var cuts = EngineSpans.Cut(facts.FindVariant(question.Variant)?.Span ?? Span.Always, question.Built, question.Serial, spans);
        var told = cuts.Stretches.ToDictionary(stretch => (stretch.Built, stretch.Serial), tell);
        bool IsRecorded(EngineSpan stretch) => facts.FitmentsAt(question.Variant, position).Any(fitment => stretch.IsIn(fitment.Span));
        var someIs = cuts.Stretches.Any(IsRecorded);
        var apart = cuts.Without((one, other) =>
            told[(one.Built, one.Serial)].Text == told[(other.Built, other.Serial)].Text && IsRecorded(one) == IsRecorded(other));

        // A stretch of which nothing is recorded says something only when no other does.
        return [.. apart.Stretches.Where(stretch => !someIs || IsRecorded(stretch))
            .Select(stretch => told[(stretch.Built, stretch.Serial)] with { When = stretch.Text })];
    }

    private static EngineChangeOn On(
        FamilyFacts facts, FitQuestion question, Part part, FitAnswer answer, string role, Dictionary<string, Part?> there, EngineSpan on)
    {
        var byVolumes = facts.Positions.Any(one => _volumes.Contains(one.Role) && there.GetValueOrDefault(one.Code) is not null);
        var was = new EngineStateReading(facts, question, new Dictionary<string, Part?>(), on, byVolumes);
        var now = new EngineStateReading(facts, question, there, on, byVolumes);
        var changes = EngineChanges.Between(was.State, now.State);
        string[] notKnown = [.. NotKnown(role, was, question.Variant + " as built").Concat(NotKnown(role, now, part.Id)).Distinct(StringComparer.Ordinal)];
        return new EngineChangeOn(on.Text, Say(role, answer, changes, now.State, notKnown), changes, notKnown);
    }

    private static EngineChange Merge(List<EngineChangeOn> told, string? link)
    {
        if (told.DistinctBy(one => one.Text).Count() == 1)
        {
            return new EngineChange(told[0].Text, told[0].Changes, told[0].NotKnown, link);
        }

        string[] Each(Func<EngineChangeOn, IReadOnlyList<string>> of) => [.. told.SelectMany(one => of(one).Select(text => $"{one.When}: {text}"))];
        return new EngineChange(
            "It hangs on which engine this is; give its serial number or build date. "
            + string.Join(" ", told.Select(one => $"{char.ToUpperInvariant(one.When[0])}{one.When[1..]}: {one.Text}")),
            Each(one => one.Changes), Each(one => one.NotKnown), link)
        {
            Spans = told,
        };
    }

    private static string Say(string role, FitAnswer answer, IReadOnlyList<string> changes, EngineState now, string[] notKnown)
    {
        var lead = answer.Headline == Headline.DoesNotFit ? "If it were made to fit" : answer.Runs.Value == Runs.Differently ? "Runs differently" : "Reckoned";
        var squish = _volumes.Contains(role) && now.SquishM is { } metres && !changes.Any(change => change.StartsWith("squish", StringComparison.Ordinal))
            ? $"squish stays {GeometryText.InMm(metres)}"
            : null;
        string[] told = [.. changes, .. squish is null ? [] : new[] { squish }];
        var geometry = changes.Any(change => change.StartsWith("trapped", StringComparison.Ordinal)) ? " Geometry only: it does not predict knock." : "";
        return told.Length > 0 ? $"{lead}: {string.Join(", ", told)}.{geometry}"
            : notKnown.Length > 0 ? $"Not reckoned: {string.Join("; ", notKnown)}."
            : "Timing and compression stay as built, as far as they are recorded.";
    }

    private static IEnumerable<string> NotKnown(string role, EngineStateReading read, string of)
    {
        if (_volumes.Contains(role))
        {
            return read.Lacking is { } lacking ? [$"{of}: the {lacking.Field.Replace('-', ' ')} is not known, found {lacking.Found}"] : [];
        }

        return role switch
        {
            Roles.IntakeCamshaft when read.State.Intake is null => [$"{of}: its intake events at 1 mm are not recorded"],
            Roles.ExhaustCamshaft when read.State.Exhaust is null => [$"{of}: its exhaust events at 1 mm are not recorded"],
            Roles.CamSprocket when read.State is { IntakeTeeth: null, ExhaustTeeth: null } => [$"{of}: its teeth are not recorded"],
            _ => [],
        };
    }

    private static string? Link(FamilyFacts facts, FitQuestion question, Position position, Part part, string role)
    {
        Permalink To(string path) => new Permalink(path).With("family", facts.Family.Code).With("variant", question.Variant);
        var isIntakeWheel = RoleParts.FindPosition(facts, Roles.IntakeCamshaft) is { } intake && RoleParts.FindWheel(facts, intake) == position;
        return role switch
        {
            Roles.IntakeCamshaft => To("/api/valve-timing").With("intake-cam", part.Id).ToString(),
            Roles.ExhaustCamshaft => To("/api/valve-timing").With("exhaust-cam", part.Id).ToString(),
            Roles.CamSprocket => To("/api/valve-timing").With(isIntakeWheel ? "intake-wheel" : "exhaust-wheel", part.Id).ToString(),
            _ => To("/api/compression").With(role, part.Id).ToString(),
        };
    }
}

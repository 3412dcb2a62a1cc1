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
        var byVolumes = facts.Positions.Any(one => _volumes.Contains(one.Role) && there.GetValueOrDefault(one.Code) is not null);
        var was = new EngineStateReading(facts, question, new Dictionary<string, Part?>(), byVolumes);
        var now = new EngineStateReading(facts, question, there, byVolumes);
        var changes = EngineChanges.Between(was.State, now.State);
        string[] notKnown = [.. NotKnown(role, was, question.Variant + " as built").Concat(NotKnown(role, now, part.Id)).Distinct(StringComparer.Ordinal)];
        return new EngineChange(Say(role, answer, changes, now.State, notKnown), changes, notKnown, Link(facts, question, position, part, role));
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

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>Judges a part against the neighbours it mates with.</summary>
internal static class JointReasons
{
    private sealed record Side(FeatureAt Own, FeatureAt Other, bool OwnIsLeft);

    /// <summary>Feature and effect pairs for which a joint with a known neighbour speaks.</summary>
    public static IReadOnlySet<(string Feature, Effect Effect)> Replaced(FamilyFacts facts, FitQuestion question, Neighbours neighbours) =>
        At(facts, question)
            .Where(joint => neighbours.At(SideOf(joint, question.Position).Other.Position) is PartThere)
            .Select(joint => (SideOf(joint, question.Position).Own.Feature, joint.Effect))
            .ToHashSet();

    /// <summary>Where another neighbour than the maker's stands at a joint of this position, and on which axis that matters.</summary>
    public static IEnumerable<(Axis Axis, string Position)> OtherNeighbours(FamilyFacts facts, FitQuestion question, Neighbours neighbours) =>
        At(facts, question)
            .Select(joint => (joint.Effect == Effect.Alters ? Axis.Runs : Axis.Mounts, SideOf(joint, question.Position).Other.Position))
            .Where(at => neighbours.IsAnother(at.Position));

    public static IEnumerable<Reason> Judge(FamilyFacts facts, FitQuestion question, Part part, Neighbours neighbours) =>
        At(facts, question).Select(joint => Judge(facts, question, part, joint, neighbours)).OfType<Reason>();

    private static IEnumerable<Joint> At(FamilyFacts facts, FitQuestion question) =>
        facts.JointsAt(question.Position).Where(joint => joint.HoldsFor(question.Variant) && joint.Evidence?.IsRetracted != true);

    private static Side SideOf(Joint joint, string position) =>
        joint.Left.Position == position ? new Side(joint.Left, joint.Right, OwnIsLeft: true) : new Side(joint.Right, joint.Left, OwnIsLeft: false);

    /// <summary>Null where the neighbour is known to be absent: then the joint does not apply.</summary>
    private static Reason? Judge(FamilyFacts facts, FitQuestion question, Part part, Joint joint, Neighbours neighbours)
    {
        var side = SideOf(joint, question.Position);
        var has = ValueSelection.Of(part, side.Own.Feature);
        var neighbour = side.Other.Position == question.Position ? new PartThere([part], PutThereBy.Maker) : neighbours.At(side.Other.Position);
        return neighbour switch
        {
            NothingThere => null,
            PartThere there => WithMend(facts, question, part, joint, Alternatives.Weigh(
                [.. there.Parts.Select(other => Judge(facts, part, has, joint, side, other, there))], there.IsChosen,
                () => OneOfSeveral(facts, joint, side, part, has, there))),
            _ => NotRecordedNeighbour(facts, part, has, joint, side),
        };
    }

    private static Reason NotRecordedNeighbour(FamilyFacts facts, Part part, KnownValue has, Joint joint, Side side)
    {
        var name = facts.FindPosition(side.Other.Position)?.Name ?? side.Other.Position;
        return Base(joint, side, Met.NotKnown, $"{FeatureName(facts, side.Own)} against {name}: what sits there is not recorded.") with
        {
            Part = FitWording.Shown(has, part: part.Id),
            Need = FitWording.Shown(NotRecorded.Instance, "neighbour"),
            Room = RoomFor(joint, has),
        };
    }

    private static Reason OneOfSeveral(FamilyFacts facts, Joint joint, Side side, Part part, KnownValue has, PartThere there)
    {
        var name = facts.FindPosition(side.Other.Position)?.Name ?? side.Other.Position;
        var each = there.Parts.Select(other => ValueSelection.Of(other, side.Other.Feature)).ToList();
        var text = $"{FeatureName(facts, side.Own)} {FitWording.Text(has)} mates with some of what the maker fitted as {name} and not with all: "
            + $"{FitWording.List(there.Parts.Select(other => other.Number))}.";
        return Base(joint, side, Met.NotKnown, text) with
        {
            Part = FitWording.Shown(has, part: part.Id),
            Need = new ComparedValue(string.Join(" or ", each.Select(FitWording.Text).Distinct()), From: "neighbour") { IsOpen = true },
            Room = RoomFor(joint, has),
            Cited = DemandReasons.EvidenceOf([has, .. each], joint.Evidence),
        };
    }

    private static Reason Judge(FamilyFacts facts, Part part, KnownValue has, Joint joint, Side side, Part neighbour, PartThere there)
    {
        var its = ValueSelection.Of(neighbour, side.Other.Feature);
        var met = Mates(joint, side, has, its);
        var difference = GapOf(side, has, its);
        var who = there.By switch
        {
            PutThereBy.Change => $"{neighbour.Number}, once that is changed",
            PutThereBy.Question => $"{neighbour.Number}, as asked",
            _ => neighbour.Number,
        };
        var position = facts.FindPosition(side.Other.Position)?.Name ?? side.Other.Position;
        var rule = joint.Relation == Relation.Band
            ? $"Difference allowed {FitWording.Text(joint.Band, joint.Unit)}{(difference is { } gap ? $", found {FitWording.Text(gap, joint.Unit)}" : "")}"
            : RelationWords(joint, side);
        var verdict = met switch
        {
            Met.Yes => "met",
            Met.No => "not met",
            _ => "not known",
        };
        var compared = $"{FeatureName(facts, side.Own)}: {FitWording.Text(has)}; {position} ({who}), {FeatureName(facts, side.Other)}: {FitWording.Text(its)}";
        return Base(joint, side, met, $"{compared}. {rule}: {verdict}.{FitWording.Notes(has, its)}") with
        {
            Part = FitWording.Shown(has, part: part.Id),
            Need = FitWording.Shown(its, "neighbour", neighbour.Id),
            Band = joint.Relation == Relation.Band ? FitWording.Shown(joint.Band, joint.Unit) : null,
            Difference = difference is { } found ? FitWording.Shown(found, joint.Unit) : null,
            Grade = DemandReasons.Weakest(joint.Evidence, has, its),
            Room = RoomFor(joint, has is StatedValue && its is not StatedValue ? has : its),
            Cited = DemandReasons.EvidenceOf([has, its], joint.Evidence),
        };
    }

    /// <summary>What the band leaves for a reading of the other side.</summary>
    private static decimal? RoomFor(Joint joint, KnownValue known) => joint.Band.Width - (Limits(known)?.Width ?? 0);

    private static Met Mates(Joint joint, Side side, KnownValue own, KnownValue other)
    {
        if (joint.Relation == Relation.Band)
        {
            return GapOf(side, own, other) is { } gap ? FeatureComparison.InBand(gap, joint.Band) : Met.NotKnown;
        }

        var (left, right) = side.OwnIsLeft ? (own, other) : (other, own);
        return FeatureComparison.Compare(left, joint.Relation, right, allowance: 0);
    }

    /// <summary>Do these two parts mate at the joint, whatever else is there?</summary>
    public static Met Mates(Joint joint, Part left, Part right)
    {
        var side = new Side(joint.Left, joint.Right, OwnIsLeft: true);
        return Mates(joint, side, ValueSelection.Of(left, joint.Left.Feature), ValueSelection.Of(right, joint.Right.Feature));
    }

    /// <summary>Right minus left as intervals; null unless both are numbers.</summary>
    private static Interval? GapOf(Side side, KnownValue own, KnownValue other) =>
        (Limits(own), Limits(other)) is ({ } mine, { } its) ? (side.OwnIsLeft ? its - mine : mine - its) : null;

    private static Interval? Limits(KnownValue value) => value switch
    {
        StatedQuantity quantity => quantity.Possible,
        StatedCount count => new Interval(count.Value, count.Value),
        _ => null,
    };

    /// <summary>What would mend a failed joint: only a part that mates here and is not known to fail at another joint of the same two positions.</summary>
    private static Reason WithMend(FamilyFacts facts, FitQuestion question, Part part, Joint joint, Reason reason)
    {
        if (reason.Met != Met.No || facts.FindPosition(SideOf(joint, question.Position).Other.Position) is not { } other)
        {
            return reason;
        }

        List<Joint> between = [.. At(facts, question).Where(one => SideOf(one, question.Position).Other.Position == other.Code)];
        string[] known =
        [
            .. facts.PartsOfKind(other.Kind)
                .Where(candidate => between.TrueForAll(one => MatesAt(one, candidate) is var met && (met == Met.Yes || (met == Met.NotKnown && one != joint))))
                .Select(candidate => candidate.Id),
        ];
        return reason with
        {
            Mend = known.Length == 0
                ? $"no known part at {other.Name} would mate with it"
                : $"would mate at {other.Name}, if it goes on there: {FitWording.Some(known)}",
        };

        Met MatesAt(Joint one, Part candidate)
        {
            var side = SideOf(one, question.Position);
            return Mates(one, side, ValueSelection.Of(part, side.Own.Feature), ValueSelection.Of(candidate, side.Other.Feature));
        }
    }

    private static string RelationWords(Joint joint, Side side) => joint.Relation switch
    {
        Relation.OneOf => side.OwnIsLeft ? "Must be one of those" : "Those must include it",
        Relation.Covers => side.OwnIsLeft ? "Must have all of those" : "Must be all covered",
        Relation.AtLeast => side.OwnIsLeft ? "Must be at least that" : "Must be at most that",
        Relation.AtMost => side.OwnIsLeft ? "Must be at most that" : "Must be at least that",
        _ => "Must be the same",
    };

    private static string FeatureName(FamilyFacts facts, FeatureAt at) =>
        facts.FindPosition(at.Position) is { } position && facts.FindKind(position.Kind)?.FindFeature(at.Feature) is { } feature ? feature.Name : at.Feature;

    private static Reason Base(Joint joint, Side side, Met met, string text) =>
        new("", ReasonBy.Joint, joint.Effect == Effect.Alters ? Axis.Runs : Axis.Mounts, met, text)
        {
            Feature = side.Own.Feature,
            At = side.Own,
            Code = joint.Code,
            Relation = joint.Relation,
            Effect = joint.Effect,
            Work = joint.Effect == Effect.Work ? joint.Work : null,
            Consequence = joint.Consequence,
        };
}

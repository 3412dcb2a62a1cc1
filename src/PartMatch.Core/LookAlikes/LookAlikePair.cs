namespace PartMatch.Core.LookAlikes;

/// <summary>One candidate judged against one known part: what orders the list. What a row says beyond that is worked out for the page only.</summary>
/// <param name="Number">The near number, or null when only the eye found the candidate.</param>
internal sealed record LookAlikePair(CataloguePart Asked, CataloguePart Other, NearNumber? Number, bool SameToTheEye, int Harm, WorstPlace? Worst)
{
    public int EaseAmong(Odds odds) => Danger.Ease(Number, SameToTheEye, odds.CameInstead(Asked.Id, Other.Id));

    public DangerLevel DangerAmong(Odds odds) => Danger.Level(EaseAmong(odds), Harm);

    /// <summary>Its place in a list, where the look-alike was offered so often.</summary>
    public ListRank RankAmong(Odds odds) => new(EaseAmong(odds) * Harm, odds.OffersOf(Other.Id ?? ""), Number?.Cost ?? double.PositiveInfinity,
        Number?.Number.Key ?? Other.Part?.Key ?? "", Other.Id ?? "");

    /// <summary>The row that the answer shows.</summary>
    public LookAlike Row(LookAlikeFacts facts)
    {
        var other = Other.Id ?? throw new InvalidOperationException("A candidate always has a part.");
        var (relation, relationText) = Asked.Id is null
            ? (PartRelation.NotJudged, null)
            : PartRelations.Between(facts.Supersessions, facts.Pairs, Asked.Id, other);
        var (differs, checks) = Asked.IsSameKindAs(Other) && Asked is { Part: { } askedPart, Kind: { } kind } && Other.Part is { } otherPart
            ? (PartDifferences.Between(facts.Mattering, kind, askedPart, otherPart), TellApart.Checks(kind, askedPart, otherPart))
            : ([], []);
        return new LookAlike(
            Number?.Number.Written ?? Other.Part?.Number ?? other,
            other,
            Other.Part?.Kind,
            Other.Part?.Name,
            Number is null ? null : new Near(Number.Edits, Number.FoldedEdits, Number.Cost, Number.MixUp.Class, Number.MixUp.At),
            SameToTheEye,
            Asked.Id,
            relation,
            relationText,
            DangerAmong(facts.Odds),
            EaseAmong(facts.Odds),
            Harm,
            Worst,
            LookAlikeWording.Danger(facts, this),
            differs,
            checks,
            LookAlikeWording.TellApart(this, differs, checks),
            facts.Odds.OffersOf(other));
    }
}

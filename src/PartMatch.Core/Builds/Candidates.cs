using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Builds;

/// <summary>What could be at each position: the donor's own, what can be bought or is in hand, nothing; each with the variant it is judged against.</summary>
internal static class Candidates
{
    /// <param name="obtainable">Parts that can be bought or are in hand.</param>
    /// <returns>In the order of the family's positions; at each the donor's own first, then by part.</returns>
    public static IReadOnlyList<IReadOnlyList<Candidate>> Of(BuildTerms terms, IReadOnlySet<string> obtainable) =>
        [.. terms.Facts.Family.Positions.Select(position => At(terms, terms.At(position.Code), obtainable))];

    /// <summary>A part as if it could be bought.</summary>
    public static Candidate Bought(BuildTerms terms, string position, Part part) => New(terms, terms.At(position), CandidateFrom.Supply, part);

    public static Candidate Nothing(BuildTerms terms, string position) =>
        New(terms, terms.At(position), CandidateFrom.Declared, Part.Nothing(terms.At(position).Position.Kind));

    private static IReadOnlyList<Candidate> At(BuildTerms terms, PositionTerms at, IReadOnlySet<string> obtainable)
    {
        var family = terms.Facts.Family;
        var kind = at.Position.Kind;
        if (at.Position.Group == BuildTerms.Services)
        {
            var goal = GoalService.Of(terms, at.Position);
            return goal is not null
                ? [goal]
                : [.. family.PartsOfKind(kind).Where(part => Takes(at, part.Id)).Select(part => New(terms, at, CandidateFrom.Declared, part)),
                    .. MayBeNothing(terms, at) ? [New(terms, at, CandidateFrom.Declared, Part.Nothing(kind))] : Array.Empty<Candidate>()];
        }

        var graded = Graded(terms, at, obtainable);
        return
        [
            .. Donors(terms, at),
            .. graded,
            .. graded.Count > 0 ? [] : family.PartsOfKind(kind).Where(part => obtainable.Contains(part.Id))
                .SelectMany(part => Counted(terms, at, New(terms, at, CandidateFrom.Supply, part))).SelectMany(one => MeasuredCopies.With(terms, at, one)),
            New(terms, at, CandidateFrom.Declared, Part.Nothing(kind)),
        ];
    }

    /// <summary>Of a service: where a wished engine is known to do without it, or nothing of the kind is recorded.</summary>
    private static bool MayBeNothing(BuildTerms terms, PositionTerms at) =>
        at.Like.Any(variant => terms.Facts.Family.FitmentsAt(variant, at.Position.Code).Any(fitment => fitment.Part is null))
        || !terms.Facts.Family.PartsOfKind(at.Position.Kind).Any();

    /// <summary>One for each number of pieces that a mate may ask for.</summary>
    private static IEnumerable<Candidate> Counted(BuildTerms terms, PositionTerms at, Candidate one)
    {
        var family = terms.Facts.Family;
        return PieceCounts.Find(family, at.Position.Code) is not { } count ? [one]
            : family.Variants.SelectMany(variant => family.FitmentsAt(variant.Code, at.Position.Code)).Where(fitment => fitment.Part is not null)
                .Select(fitment => fitment.Quantity).OfType<int>().Distinct().Order()
                .Select(pieces => one with { Pieces = pieces, CountedBy = count });
    }

    private static bool Takes(PositionTerms at, string part) => !at.Refuse.Contains(part) && (at.Parts.Count == 0 || at.Parts.Contains(part));

    /// <summary>What the donor has there: one candidate, though nobody may know yet which of several parts it is; none where it is damaged or missing.</summary>
    private static IEnumerable<Candidate> Donors(BuildTerms terms, PositionTerms at)
    {
        var donor = terms.Build.Donor;
        Fitment[] fitted =
        [
            .. terms.Facts.Family.FitmentsAt(donor.Variant, at.Position.Code)
                .Where(fitment => (terms.Built is null || Fit.FitCheck.Overlaps(fitment.Span, terms.Built)) && Spans(fitment.Span, donor.Serial)),
        ];
        Part[] parts = [.. fitted.Select(fitment => fitment.Part).OfType<string>().Distinct(StringComparer.Ordinal).Select(terms.Facts.Family.GetPart)];
        if (parts.Length == 0 || at.StateOfDonor is PartState.Damaged or PartState.Missing)
        {
            yield break;
        }

        var item = parts is [var one]
            ? terms.Facts.Items.FirstOrDefault(item => item.Address == at.State?.Item && (item.Part is null || item.Part == one.Id))
            : null;
        yield return new Candidate(
            at.Position.Code, CandidateFrom.Donor, item is null ? parts : [Items.MeasuredPart.Of(parts[0], item)], IsChosenByMeasurement(terms, at),
            fitted[0].Quantity, ReferenceOf(terms, at, parts), at.Keep == KeepWish.Keep || (at.Parts.Count > 0 && parts.All(part => at.Parts.Contains(part.Id))))
        {
            Examples = item is null ? [] : [item],
        };
    }

    private static bool Spans(Span span, long? serial) => serial is null || ((span.SerialFrom ?? serial) <= serial && (span.SerialTo ?? serial) >= serial);

    /// <summary>Where one is chosen by measurement: for each way of running that is wished, the grades the maker fits, as one candidate.</summary>
    private static List<Candidate> Graded(BuildTerms terms, PositionTerms at, IReadOnlySet<string> obtainable)
    {
        if (!IsChosenByMeasurement(terms, at))
        {
            return [];
        }

        return
        [
            .. terms.Facts.Family.Variants.Select(variant => terms.Facts.Family.FitmentsAt(variant.Code, at.Position.Code).ToArray())
                .Select(fitted => (Parts: PartsOf(terms, fitted), fitted.FirstOrDefault()?.Quantity))
                .Where(set => set.Parts.Length > 0 && set.Parts.Any(part => obtainable.Contains(part.Id)))
                .DistinctBy(set => string.Join('|', set.Parts.Select(part => part.Id)))
                .Select(set => new Candidate(
                    at.Position.Code, CandidateFrom.Supply, set.Parts, IsGraded: true, set.Quantity, ReferenceOf(terms, at, set.Parts),
                    at.Parts.Count > 0 && set.Parts.All(part => at.Parts.Contains(part.Id)))),
        ];
    }

    private static Part[] PartsOf(BuildTerms terms, IEnumerable<Fitment> fitted) =>
        [.. fitted.Select(fitment => fitment.Part).OfType<string>().Distinct(StringComparer.Ordinal).Select(terms.Facts.Family.GetPart)];

    private static bool IsChosenByMeasurement(BuildTerms terms, PositionTerms at) =>
        terms.Facts.Family.Selects.Any(row => row.Position == at.Position.Code && row.Evidence?.IsRetracted != true);

    private static Candidate New(BuildTerms terms, PositionTerms at, CandidateFrom from, Part part) => new(
        at.Position.Code, from, [part], IsGraded: false, part.IsNothing ? 0 : PiecesOf(terms, at, part), ReferenceOf(terms, at, [part]),
        at.Parts.Contains(part.Id));

    /// <summary>The first wished variant on which it is the maker's own there, or stands for it by number; else the most wished one.</summary>
    private static string ReferenceOf(BuildTerms terms, PositionTerms at, IReadOnlyList<Part> parts) =>
        at.Like.FirstOrDefault(variant => parts.All(part => IsAtHome(terms, at, variant, part))) ?? at.Like[0];

    private static bool IsAtHome(BuildTerms terms, PositionTerms at, string variant, Part part)
    {
        Fitment[] fitted = [.. terms.Facts.Family.FitmentsAt(variant, at.Position.Code)];
        return part.IsNothing
            ? fitted.Any(fitment => fitment.Part is null)
            : fitted.Any(fitment => fitment.Part == part.Id || (fitment.Part is { } old && terms.Facts.Family.Supersessions.Any(link =>
                link.HoldsFor(variant) && ((link.OldPart == old && link.NewPart == part.Id)
                    || (link.Way == SupersessionWay.Both && link.NewPart == old && link.OldPart == part.Id)))));
    }

    /// <summary>As the wished variants have it there, else as any variant has this part, else as the target has there what it has.</summary>
    public static int? PiecesOf(BuildTerms terms, PositionTerms at, Part part)
    {
        var family = terms.Facts.Family;
        string[] variants = [.. at.Like.Concat(family.Variants.Select(variant => variant.Code)).Distinct(StringComparer.Ordinal)];
        Fitment[] fitted = [.. variants.SelectMany(variant => family.FitmentsAt(variant, at.Position.Code))];
        return (fitted.FirstOrDefault(fitment => fitment.Part == part.Id) ?? fitted.FirstOrDefault(fitment => fitment.Part is not null))?.Quantity;
    }
}

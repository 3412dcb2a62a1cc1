using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Openings;

/// <summary>What a plan opens, and what it renews for that; read from its lines and works alone.</summary>
internal sealed class OpenedPlan
{
    private readonly BuildTerms _terms;

    private OpenedPlan(BuildTerms terms, IReadOnlyDictionary<string, Disturbed> disturbed) => (_terms, Disturbed) = (terms, disturbed);

    public IReadOnlyDictionary<string, Disturbed> Disturbed { get; }

    /// <param name="plan">What is at every position.</param>
    /// <param name="works">Works that the plan does.</param>
    public static OpenedPlan Of(BuildTerms terms, IReadOnlyDictionary<string, Candidate> plan, IReadOnlySet<string> works)
    {
        string[] changed =
        [
            .. plan.Values.Where(one => one.Goal is null && IsChanged(terms, one)).Select(one => one.Position)
                .Union(works.Select(terms.Facts.Family.FindWork).OfType<Work>().SelectMany(work => WorkedOn(terms.Facts.Family, work)).Where(plan.ContainsKey)),
        ];
        return new OpenedPlan(terms, Disturbance.Of(terms.Facts.Family, Engines(terms), changed, position => IsThere(terms, position)));
    }

    /// <summary>The donor as it comes, and what it becomes.</summary>
    public static IReadOnlyList<string> Engines(BuildTerms terms) => [.. new[] { terms.Build.Donor.Variant, terms.Target }.Distinct(StringComparer.Ordinal)];

    /// <summary>Has the donor anything there?</summary>
    public static bool IsThere(BuildTerms terms, string position) =>
        terms.At(position) is { StateOfDonor: not PartState.Missing, Position.Group: not BuildTerms.Services }
        && terms.FittedToDonor(position).Any(fitment => fitment.Part is not null);

    /// <summary>Is anything else than plain keeping done there? To leave empty what is empty is nothing.</summary>
    public static bool IsChanged(BuildTerms terms, Candidate candidate) =>
        terms.At(candidate.Position).Position.Group != BuildTerms.Services && !candidate.IsDonors
        && (!candidate.IsNothing || IsThere(terms, candidate.Position));

    /// <summary>Positions that a work is done on: those it changes; where it changes nothing, those it asks to be there.</summary>
    public static IEnumerable<string> WorkedOn(FamilyFacts facts, Work work) => GradeOrders.IsOne(work) || CureWorks.IsOne(work)
        ? []
        : (work.Changes.Count > 0 ? PlanWorks.PositionsOf(work) : work.NeedsFirst).SelectMany(named => PositionsOf(facts, named)).Distinct();

    /// <summary>A work may name a position, or a kind that sits at several.</summary>
    private static IEnumerable<string> PositionsOf(FamilyFacts facts, string named) =>
        facts.FindPosition(named) is not null ? [named] : facts.Positions.Where(position => position.Kind == named).Select(position => position.Code);

    /// <summary>Rows by which this position is renewed, because what they name is disturbed; in the order of the books.</summary>
    public IEnumerable<Renewal> RenewedAt(string position) =>
        Disturbance.Renewals(_terms.Facts.Family, Engines(_terms)).Where(row => row.Renewed == position && Disturbed.ContainsKey(row.Opened));

    /// <summary>What is renewed because this position is disturbed.</summary>
    public IEnumerable<Renewal> RenewedFor(string opened) =>
        Disturbed.ContainsKey(opened) ? Disturbance.Renewals(_terms.Facts.Family, Engines(_terms)).Where(row => row.Opened == opened) : [];

    /// <summary>Why what the donor has there does not stay though it would serve; null where no renewal asks for it.</summary>
    public string? WhyRenewed(string position)
    {
        var rows = RenewedAt(position).ToList();
        if (rows.Count == 0 || Disturbed[position].By == DisturbedBy.Itself)
        {
            return null;
        }

        var one = Disturbed[position];
        var opened = one.By == DisturbedBy.Renewal ? one.Chain[^2]
            : rows.Select(row => row.Opened).Where(at => at != position)
                .OrderBy(at => Disturbed[at].Chain.Count).ThenBy(at => at, StringComparer.Ordinal).FirstOrDefault();
        if (opened is null)
        {
            return $"Never used again once it is off, and it is {Say(one)}.";
        }

        var others = rows.Select(row => row.Opened).Where(at => at != opened && at != position).Distinct(StringComparer.Ordinal).ToList();
        var and = others.Count switch
        {
            0 => "",
            1 => $" and {NameOf(others[0])}",
            var count => FormattableString.Invariant($" and {count} others"),
        };
        return $"Renewed because this is opened: {NameOf(opened)}{and}{(Disturbed[opened].By == DisturbedBy.Itself ? "" : $" ({Say(Disturbed[opened])})")}.";
    }

    /// <summary>"off for Cylinder head, for Pistons".</summary>
    public string Say(Disturbed one)
    {
        var fors = string.Join(", ", one.Chain.Reverse().Skip(1).Select(position => $"for {NameOf(position)}"));
        return one.By switch
        {
            DisturbedBy.Itself => "changed or worked on itself",
            DisturbedBy.Way => $"off {fors}",
            _ => $"renewed {fors}",
        };
    }

    public string NameOf(string position) => _terms.Facts.Family.FindPosition(position)?.Name ?? position;
}

using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Openings;

/// <summary>While it is open: known weak points of what the plan has at positions that it disturbs, each with what mends it. None is ever forced.</summary>
public sealed record BuildWeakPoints(PlanAsked Asked, PlanStatus Status, string HeadlineText, IReadOnlyList<OpenWeakPoint> WeakPoints)
{
    public string Permalink { get; init; } = "";
}

/// <param name="What">A sentence.</param>
/// <param name="Variant">The engine that it is known of.</param>
/// <param name="Part">What the plan has there.</param>
/// <param name="Opened">Why it is open in this plan.</param>
/// <param name="Later">What would have to come off to do it another time.</param>
/// <param name="Evidence">Null where none is recorded.</param>
public sealed record OpenWeakPoint(
    string WeakPoint, string Variant, string Position, string Name, string? Part, string What, IReadOnlyList<WeakPointRemedy> Remedies, string Opened,
    IReadOnlyList<string> Later, string LaterText, string? Note, SourceShown? Evidence);

/// <param name="Part">The part that mends it; null for a work.</param>
/// <param name="Work">The work that mends it; null for a part.</param>
/// <param name="InPlan">Does the plan do it already?</param>
/// <param name="Price">The cheapest that is to be had, without sending; null where nobody offers it or its price is not recorded.</param>
/// <param name="Offer">As <c>book/offer</c>.</param>
public sealed record WeakPointRemedy(string? Part, string? Work, string Name, bool InPlan, Money? Price, string? Offer, string Text);

/// <summary>Which weak points lie open in a plan?</summary>
internal sealed class OpenWeakPoints(PlanRun run, SolvedPlan solved)
{
    private readonly IReadOnlyDictionary<string, Candidate> _chosen = solved.Written.Chosen(solved.Solution);
    private readonly IReadOnlySet<string> _works = solved.Written.WorksOf(solved.Solution);
    private readonly OpenedPlan _opened = OpenedPlan.Of(run.Terms, solved.Written.Chosen(solved.Solution), solved.Written.WorksOf(solved.Solution));

    private readonly PlanPurchases _purchases = PlanPurchases.Of(run, solved);

    private FamilyFacts Family => run.Terms.Facts.Family;

    /// <summary>In the order of their codes.</summary>
    public IReadOnlyList<OpenWeakPoint> All() =>
    [
        .. Family.WeakPoints.Where(weak => weak.Evidence?.IsRetracted != true && _opened.Disturbed.ContainsKey(weak.Position) && Has(weak)).Select(Shown),
    ];

    /// <summary>Is there in the plan what is weak: the donor's own of that engine, or a part that the variant has there?</summary>
    private bool Has(WeakPoint weak)
    {
        if (_chosen.GetValueOrDefault(weak.Position) is not { IsNothing: false } there)
        {
            return false;
        }

        var fitted = Family.FitmentsAt(weak.Variant, weak.Position).Select(fitment => fitment.Part).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return there.IsDonors
            ? weak.Variant == run.Terms.Build.Donor.Variant && MayBe(weak.Span)
            : there.Parts.Any(part => fitted.Contains(part.Id) && (part.Id != weak.RemedyPart || !IsNew(weak.Position)));
    }

    /// <summary>A used one of the same number has the weakness of its years; what is in hand is taken for new.</summary>
    private bool IsNew(string position) => _purchases.OffersFor(position).All(offer => offer.IsNew);

    /// <summary>What is not known of the donor's age is not taken for its being newer.</summary>
    private bool MayBe(Span span) => (run.Terms.Built is not { } built || FitCheck.Overlaps(span, built))
        && (run.Terms.Build.Donor.Serial is not { } serial || ((span.SerialFrom ?? serial) <= serial && (span.SerialTo ?? serial) >= serial));

    private OpenWeakPoint Shown(WeakPoint weak)
    {
        var one = _opened.Disturbed[weak.Position];
        bool WillBeThere(string position) => _chosen.TryGetValue(position, out var there) && !there.IsNothing;
        var another = Disturbance.Of(Family, [run.Terms.Target], [weak.Position], WillBeThere);
        string[] later = [.. another.Keys.Where(position => position != weak.Position).Order(StringComparer.Ordinal)];
        return new OpenWeakPoint(
            weak.Code, weak.Variant, weak.Position, _opened.NameOf(weak.Position), _chosen[weak.Position].Parts is [var part] ? part.Id : null, weak.What,
            [.. Parts(weak), .. Works(weak)], $"It is {_opened.Say(one)}.", later,
            later.Length == 0
                ? "Nothing else has to come off for it."
                : FormattableString.Invariant($"Another time {later.Length} other positions have to come off first."),
            weak.Note, weak.Evidence is { } evidence ? SourceShown.Of(evidence) : null);
    }

    private IEnumerable<WeakPointRemedy> Parts(WeakPoint weak)
    {
        if (weak.RemedyPart is not { } id || Family.FindPart(id) is not { } part)
        {
            yield break;
        }

        var pieces = _chosen[weak.Position].Pieces ?? 1;
        var best = run.Screen.Offers.Where(offer => offer.Offer.Part == id)
            .Select(offer => (Offer: offer, Packs: ((pieces - 1) / offer.Pieces) + 1)).Where(one => one.Packs <= (one.Offer.Offer.Stock ?? int.MaxValue))
            .OrderBy(one => one.Offer.Landed * one.Packs).ThenBy(one => one.Offer.Address, StringComparer.Ordinal).FirstOrDefault();
        var inPlan = !_chosen[weak.Position].IsDonors && _chosen[weak.Position].Parts.Any(there => there.Id == id) && IsNew(weak.Position);
        var price = best.Offer is null ? null : run.Terms.MoneyOf(best.Offer.Landed * best.Packs);
        yield return new WeakPointRemedy(
            id, null, part.Name, inPlan, price, best.Offer?.Address,
            inPlan ? "This plan has it there."
            : price is null ? "Nobody offers it that counts here."
            : FormattableString.Invariant(
                $"{part.Number}: from {price.Amount} {price.Currency} for {pieces}, without sending; whether it fits there is another question."));
    }

    private IEnumerable<WeakPointRemedy> Works(WeakPoint weak)
    {
        if (weak.RemedyWork is not { } code || Family.FindWork(code) is not { } work)
        {
            yield break;
        }

        var inPlan = _works.Contains(code);
        var price = work.Price is { } asked && run.Terms.Convert(asked) is { } minor ? run.Terms.MoneyOf(minor) : null;
        yield return new WeakPointRemedy(
            null, code, work.Name, inPlan, price, null,
            inPlan ? "This plan does it."
            : price is null ? $"{work.Name}: its price is not recorded, or has no rate."
            : $"{work.Name}: {price.Amount} {price.Currency}.");
    }
}

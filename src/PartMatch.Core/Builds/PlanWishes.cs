using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What the build asks for, as rules; each wish is a ground that a conflict can name.</summary>
internal sealed class PlanWishes
{
    private readonly BuildTerms _terms;
    private readonly IReadOnlyList<IReadOnlyList<Candidate>> _candidates;
    private readonly IReadOnlyDictionary<string, int> _places;
    private readonly IReadOnlyList<Work> _works;
    private readonly PlanGrounds _grounds;
    private readonly List<PlanRule> _rules = [];

    private PlanWishes(
        BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates, IReadOnlyDictionary<string, int> places, IReadOnlyList<Work> works,
        PlanGrounds grounds) =>
        (_terms, _candidates, _places, _works, _grounds) = (terms, candidates, places, works, grounds);

    /// <param name="places">By position.</param>
    /// <param name="works">The jobs of the problem, in their order.</param>
    public static IReadOnlyList<PlanRule> Of(
        BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates, IReadOnlyDictionary<string, int> places, IReadOnlyList<Work> works,
        PlanGrounds grounds)
    {
        var wishes = new PlanWishes(terms, candidates, places, works, grounds);
        wishes.Write();
        return wishes._rules;
    }

    private void Write()
    {
        var sized = InjectorGoals.Size(_terms);
        foreach (var (place, choices) in _candidates.Index())
        {
            var position = _terms.Facts.Family.Positions[place];
            foreach (var (choice, candidate) in choices.Index())
            {
                WriteWishes(_terms.At(position.Code), new ChoiceMade(place, choice), candidate);
                WriteInjectors(position, new ChoiceMade(place, choice), candidate, sized);
                WritePieces(new ChoiceMade(place, choice), candidate);
            }

            WriteKeeping(_terms.At(position.Code), place, choices);
        }

        foreach (var asked in _terms.Build.Works)
        {
            WriteWork(asked);
        }

        foreach (var work in _works.Where(GradeOrders.IsOne))
        {
            WriteOrder(work);
        }
    }

    /// <summary>Of what is chosen by measurement: it is bought just where it is measured for.</summary>
    private void WriteOrder(Work order)
    {
        var place = _places[GradeOrders.PositionOf(order)];
        var done = new JobDone(JobOf(order.Code));
        var bought = ChoicesAt(place, candidate => GradeOrders.IsBought(candidate) && !BoughtOffers.Cover(_terms, candidate, _candidates));
        _rules.Add(new PlanRule([done], bought));
        _rules.AddRange(bought.Select(made => new PlanRule([made], [done])));
    }

    /// <summary>So many pieces go with no mate that asks for another number; a mate of which that is not known asks for as many as are usual.</summary>
    private void WritePieces(ChoiceMade made, Candidate candidate)
    {
        if (candidate.CountedBy is { } count)
        {
            var usual = Candidates.PiecesOf(_terms, _terms.At(candidate.Position), candidate.Parts[0]); // a candidate has a part
            long? AskedBy(Candidate mate) => mate.Parts is [var one] ? count.Of(one) ?? usual : usual;
            _rules.AddRange(ChoicesAt(_places[count.Mate], mate => AskedBy(mate) != candidate.Pieces).Select(mate => new PlanRule([made, mate], [])));
        }
    }

    private void WriteWishes(PositionTerms at, ChoiceMade made, Candidate candidate)
    {
        var (name, code) = (at.Position.Name, at.Position.Code);
        if (at.Parts.Count > 0 && !candidate.Parts.All(part => at.Parts.Contains(part.Id)))
        {
            Never(made, $"parts:{code}", $"{name}: only {Fit.FitWording.List(at.Parts)} may be there.", $"allow other parts as {name}");
        }

        foreach (var part in candidate.Parts.Where(part => at.Refuse.Contains(part.Id)))
        {
            Never(made, $"refuse:{code}:{part.Id}", $"{name}: {part.Number} is refused.", $"allow {part.Number} as {name}");
        }

        if (at.Keep == KeepWish.Renew && candidate.IsDonors)
        {
            Never(made, $"renew:{code}", $"{name}: the donor's own is to be renewed.", $"keep the donor's {name}");
        }
    }

    private void WriteKeeping(PositionTerms at, int place, IReadOnlyList<Candidate> choices)
    {
        var (name, code) = (at.Position.Name, at.Position.Code);
        if (at.Keep is KeepWish.Keep or KeepWish.KeepIfPossible)
        {
            var ground = _grounds.Of($"keep:{code}", $"{name}: the donor's own stays.", $"let the donor's {name} go");
            _rules.Add(new PlanRule([], DonorsAt(place), ground));
        }

        // Grades belong to the surface they were measured on: the donor's stay only where that stays.
        if (choices.Index().FirstOrDefault(choice => choice.Item is { IsDonors: true, IsGraded: true }) is (var own, { } graded))
        {
            var rows = _terms.Facts.Family.Selects.Where(row => row.Position == code && row.Evidence?.IsRetracted != true);
            foreach (var measured in rows.Select(row => row.Measured.Position).Distinct(StringComparer.Ordinal))
            {
                if (measured != code && _places.TryGetValue(measured, out var other))
                {
                    _rules.Add(new PlanRule([new ChoiceMade(place, own)], DonorsAt(other)));
                }
            }
        }
    }

    private void WriteInjectors(Position position, ChoiceMade made, Candidate candidate, IReadOnlyDictionary<string, SizedInjector> sized)
    {
        if (sized.Count == 0 || !InjectorGoals.Sets(_terms, position.Code) || candidate.IsNothing || !sized.TryGetValue(candidate.Parts[0].Id, out var one))
        {
            return;
        }

        if (one.Enough == Enough.No)
        {
            Never(made, "goal:power", $"{_terms.Build.Goal?.Power} at {_terms.Build.Goal?.Speed}: the injectors have to be enough for it.",
                "ask for less power, more duty or more pressure");
        }
        else if (one.Enough == Enough.NotKnown)
        {
            _rules.Add(new PlanRule([made], [new DoubtTaken(made.Place)]));
        }
    }

    private void WriteWork(AskedWork asked)
    {
        if (JobOf(asked.Work) is var job && job < 0)
        {
            return;
        }

        var ground = _grounds.Of($"work:{asked.Work}", $"{_works[job].Name}: you asked for it.", $"do without: {_works[job].Name}");
        if (asked.WhenNew is not { } position)
        {
            _rules.Add(new PlanRule([], [new JobDone(job)], ground));
            return;
        }

        var place = _places[position];
        var bought = ChoicesAt(place, choice => choice is { IsDonors: false, IsNothing: false });
        _rules.AddRange(bought.Select(made => new PlanRule([made], [new JobDone(job)], ground)));
    }

    private IReadOnlyList<ChoiceMade> ChoicesAt(int place, Func<Candidate, bool> isIt) =>
        [.. _candidates[place].Index().Where(choice => isIt(choice.Item)).Select(choice => new ChoiceMade(place, choice.Index))];

    private IReadOnlyList<ChoiceMade> DonorsAt(int place) => ChoicesAt(place, choice => choice.IsDonors);

    /// <summary>-1 where the plan has no such work.</summary>
    private int JobOf(string work) => _works.Index().Where(one => one.Item.Code == work).Select(one => one.Index).DefaultIfEmpty(-1).First();

    private void Never(ChoiceMade made, string name, string text, string mend) => _rules.Add(new PlanRule([made], [], _grounds.Of(name, text, mend)));
}

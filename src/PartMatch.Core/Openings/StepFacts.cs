using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Openings;

/// <summary>What the books record of one step of an order of work.</summary>
internal sealed class StepFacts(PlanRun run, SolvedPlan solved, BuildPlan plan, OpenedPlan opened)
{
    private readonly IReadOnlyDictionary<string, Candidate> _chosen = solved.Written.Chosen(solved.Solution);
    private readonly IReadOnlyDictionary<string, BuildLine> _lines = plan.Lines.ToDictionary(line => line.Position, StringComparer.Ordinal);

    private readonly StepTightenings _tightenings = new(run.Terms, solved.Written.Chosen(solved.Solution));

    private FamilyFacts Family => run.Terms.Facts.Family;

    public WorkStep On(string position, IReadOnlyList<string> after, IReadOnlyList<PlannedWork> works)
    {
        var candidate = _chosen[position];
        var verb = candidate.IsDonors ? "Put back" : "Fit";
        return new WorkStep(
            0, position, opened.NameOf(position), $"{verb}: {What(position, candidate)}", WhyThere(position), opened.Disturbed[position].Chain, after)
        {
            Part = candidate.Parts is [var one] ? one.Id : null,
            Pieces = candidate.Pieces,
            Works = [.. WorksAt(position).Intersect(works.Select(work => work.Name), StringComparer.Ordinal)],
            Renewals = [.. opened.RenewedFor(position).Where(row => row.Renewed != position).Select(Renewed)],
            Tightening = _tightenings.Of(position, candidate),
            Cautions = CautionsAt(position, run.Terms.Target),
        };
    }

    public WorkStep Filled(string position) => new(
        0, position, opened.NameOf(position), $"Fill: {What(position, _chosen[position])}", WhyThere(position), opened.Disturbed[position].Chain, [])
    {
        Part = _chosen[position].Parts is [var one] ? one.Id : null,
        Pieces = _chosen[position].Pieces,
        Cautions = CautionsAt(position, run.Terms.Target),
    };

    /// <summary>Of what goes there: why it and nothing else; of what goes back, why it was off.</summary>
    private string WhyThere(string position) =>
        !_chosen[position].IsDonors && _lines.GetValueOrDefault(position) is { } line ? $"{line.ActionText}: {line.Because}" : Why(position);

    public string Why(string position)
    {
        var one = opened.Disturbed[position];
        return one.By != DisturbedBy.Way && _lines.GetValueOrDefault(position) is { } line
            ? $"{line.ActionText}: {line.Because}"
            : $"It has to be {opened.Say(one)}.";
    }

    /// <summary>What is done to the donor's own part once it is off; what is done to the one that comes in its place stands where that goes on.</summary>
    public IReadOnlyList<string> WorksOff(string position) => _chosen.GetValueOrDefault(position) is { IsDonors: true } ? WorksAt(position) : [];

    public IReadOnlyList<string> WorksAt(string position) => [.. WorksOn(position).Select(work => work.Name)];

    /// <param name="variant">The engine that it comes off, or goes on.</param>
    public IReadOnlyList<string> CautionsAt(string position, string variant)
    {
        var codes = (Family.FindPosition(position) is { } at ? Family.GetKind(at.Kind).Cautions : [])
            .Concat(WorksOn(position).SelectMany(work => work.Cautions)).ToList();
        return [.. EngineUse.Cautions(Family, [variant], codes).Where(codes.Contains).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    public IEnumerable<Work> WorksOn(string position) =>
        solved.Written.Jobs.Where((work, job) => solved.Solution.Jobs[job] is not null && OpenedPlan.WorkedOn(Family, work).Contains(position));

    private string What(string position, Candidate candidate) => candidate.Parts switch
    {
        [var one] => $"{opened.NameOf(position)}, {one.Number}",
        var several => $"{opened.NameOf(position)}, one of {FitWording.List(several.Select(part => part.Number))}",
    };

    private StepRenewal Renewed(Renewal row) => new(
        row.Renewed, opened.NameOf(row.Renewed), _chosen.GetValueOrDefault(row.Renewed) is { IsNothing: false, Parts: [var part] } ? part.Id : null,
        row.Amount?.Text, row.Bead, row.CureHours, row.Note, row.Evidence is { } evidence ? SourceShown.Of(evidence) : null);
}

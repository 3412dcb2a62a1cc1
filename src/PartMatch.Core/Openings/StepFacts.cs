using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Parts;
using PartMatch.Core.Tightening;

namespace PartMatch.Core.Openings;

/// <summary>What the books record of one step of an order of work.</summary>
internal sealed class StepFacts(PlanRun run, SolvedPlan solved, BuildPlan plan, OpenedPlan opened)
{
    private readonly IReadOnlyDictionary<string, Candidate> _chosen = solved.Written.Chosen(solved.Solution);
    private readonly IReadOnlyDictionary<string, BuildLine> _lines = plan.Lines.ToDictionary(line => line.Position, StringComparer.Ordinal);

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
            Tightening = Tightened(position, candidate),
            Cautions = CautionsAt(position),
        };
    }

    public WorkStep Filled(string position) => new(
        0, position, opened.NameOf(position), $"Fill: {What(position, _chosen[position])}", WhyThere(position), opened.Disturbed[position].Chain, [])
    {
        Part = _chosen[position].Parts is [var one] ? one.Id : null,
        Pieces = _chosen[position].Pieces,
        Cautions = CautionsAt(position),
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

    public IReadOnlyList<string> WorksAt(string position) => [.. WorksOn(position).Select(work => work.Name)];

    public IReadOnlyList<string> CautionsAt(string position) =>
    [
        .. (Family.FindPosition(position) is { } at ? Family.GetKind(at.Kind).Cautions : [])
            .Concat(WorksOn(position).SelectMany(work => work.Cautions)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

    private IEnumerable<Work> WorksOn(string position) =>
        solved.Written.Jobs.Where((work, job) => solved.Solution.Jobs[job] is not null && OpenedPlan.WorkedOn(Family, work).Contains(position));

    private string What(string position, Candidate candidate) => candidate.Parts switch
    {
        [var one] => $"{opened.NameOf(position)}, {one.Number}",
        var several => $"{opened.NameOf(position)}, one of {FitWording.List(several.Select(part => part.Number))}",
    };

    private StepRenewal Renewed(Renewal row) => new(
        row.Renewed, opened.NameOf(row.Renewed), _chosen.GetValueOrDefault(row.Renewed) is { IsNothing: false, Parts: [var part] } ? part.Id : null,
        row.Amount?.Text, row.Bead, row.CureHours, row.Note, row.Evidence is { } evidence ? SourceShown.Of(evidence) : null);

    /// <summary>As the engine has it that the part runs like; where nothing is recorded of that, as the engine has it that is built.</summary>
    private IReadOnlyList<StepTightening> Tightened(string position, Candidate candidate)
    {
        foreach (var variant in new[] { candidate.Reference, run.Terms.Target }.Distinct(StringComparer.Ordinal))
        {
            StepTightening[] told =
            [
                .. TorqueSource.At(Family, variant, position)
                    .Where(source => !source.Evidence.IsRetracted && Holds(source.Span, variant))
                    .OrderBy(source => source.Evidence.Grade == EvidenceGrade.MakersDocument ? 0 : 1)
                    .ThenBy(source => source.Evidence.Code, StringComparer.Ordinal)
                    .Select(source => new StepTightening(
                        variant, [.. source.Passes.Select(pass => TorqueSource.TextOf(pass.Turn))],
                        source.Passes.Select(pass => pass.Sequence).FirstOrDefault(told => told is not null),
                        source.Passes.Select(pass => pass.Lubrication).FirstOrDefault(told => told is not null),
                        source.Passes.Select(pass => pass.SingleUse).FirstOrDefault(told => told is not null),
                        [.. source.Passes.Select(pass => pass.Note).OfType<string>()], SourceShown.Of(source.Evidence))),
            ];
            if (told.Length > 0)
            {
                return told;
            }
        }

        return [];
    }

    /// <summary>Of the donor's own variant the engine is known; of another every stretch of it is shown.</summary>
    private bool Holds(Span span, string variant) => variant != run.Terms.Build.Donor.Variant
        || ((run.Terms.Built is not { } built || FitCheck.Overlaps(span, built))
            && (run.Terms.Build.Donor.Serial is not { } serial || ((span.SerialFrom ?? serial) <= serial && (span.SerialTo ?? serial) >= serial)));
}

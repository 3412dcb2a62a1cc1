using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>A build as a problem of whole numbers, with what its indexes mean.</summary>
/// <param name="Places">For each place its position and what each choice is.</param>
/// <param name="Offers">For each offer of the problem the one it is.</param>
/// <param name="Jobs">For each job its work.</param>
/// <param name="Grounds">What each ground is.</param>
/// <param name="Products">For each product the part, or for grades the parts one of which it is.</param>
internal sealed record WrittenPlan(
    PlanProblem Problem, IReadOnlyList<IReadOnlyList<Candidate>> Places, IReadOnlyList<ScreenedOffer> Offers, IReadOnlyList<Work> Jobs,
    IReadOnlyList<BuildGround> Grounds, IReadOnlyList<string> Products)
{
    /// <summary>Risks of lines that it weighs.</summary>
    public IReadOnlySet<LineRisk> Risks { get; init; } = new HashSet<LineRisk>();

    /// <summary>Keys of the line rules it holds.</summary>
    public IReadOnlySet<string> Keys { get; init; } = new HashSet<string>();

    public IReadOnlyDictionary<string, Candidate> Chosen(PlanSolution solution) => solution.Choices
        .Select((choice, place) => choice is { } index ? Places[place][index] : null).OfType<Candidate>()
        .ToDictionary(candidate => candidate.Position, StringComparer.Ordinal);

    public IReadOnlySet<string> WorksOf(PlanSolution solution) =>
        Jobs.Where((_, job) => solution.Jobs[job] is not null).Select(work => work.Code).ToHashSet(StringComparer.Ordinal);
}

/// <summary>A wish or a fact that a conflict can name.</summary>
/// <param name="Name">Stable: <c>budget</c>, <c>keep:crankshaft</c>, <c>obtainable:piston</c>.</param>
/// <param name="Text">As a sentence.</param>
/// <param name="Mend">The change that lifts it.</param>
internal sealed record BuildGround(string Name, string Text, string Mend)
{
    private const string Obtainable = "obtainable:";

    /// <summary>That something is to be had is no wish: nobody can give it up.</summary>
    public bool IsFact => Name.StartsWith(Obtainable, StringComparison.Ordinal);

    /// <summary>Of a fact: where something has to be.</summary>
    public string Position => Name[Obtainable.Length..];
}

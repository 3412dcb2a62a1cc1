using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Identification;

/// <summary>What is to be identified: the candidates, and every check that is recorded for them.</summary>
/// <param name="Candidates">At most 64, in the order asked.</param>
/// <param name="WeightsText">How likely each is taken to be, and why.</param>
/// <param name="Observables">Cheapest first, those that work before paying first among equals.</param>
internal sealed record IdentificationSubject(IReadOnlyList<SubjectCandidate> Candidates, string WeightsText, IReadOnlyList<Observable> Observables)
{
    /// <summary>The order in which equally good checks are taken.</summary>
    public static IReadOnlyList<Observable> Ordered(IEnumerable<Observable> observables) =>
    [
        .. observables.OrderBy(one => one.Minutes).ThenBy(one => !one.WorksBeforePaying)
            .ThenBy(one => one.Feature != Feature.Present).ThenBy(one => one.Check.Method)
            .ThenBy(one => one.Address, StringComparer.Ordinal).ThenBy(one => one.Kind?.Code, StringComparer.Ordinal),
    ];

    public IReadOnlyList<string> CodesOf(ulong candidates) => [.. IdentificationKey.Members(candidates).Select(candidate => Candidates[candidate].Code)];

    public string NamesOf(ulong candidates) => string.Join(" or ", IdentificationKey.Members(candidates).Select(candidate => Candidates[candidate].Short));
}

/// <param name="Code">Id of a part, or code of a variant.</param>
/// <param name="Short">What it is called in a sentence: the number of a part, the name of a variant.</param>
/// <param name="Weight">How likely, in any measure; above 0.</param>
/// <param name="Part">Null for a variant.</param>
internal sealed record SubjectCandidate(string Code, string Short, string Name, double Weight, Part? Part);

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Fit;

/// <summary>A fit request whose numbers have been looked up: the question, or the problem with one of its numbers.</summary>
internal sealed record FitReading(FitQuestion? Question, Problem? Problem)
{
    public static FitReading Read(FitRequest request, PartStore parts)
    {
        var named = string.IsNullOrEmpty(request.Part) ? null : NamedPart.Find(request.Part, request.Maker, parts);
        if (named?.IsAmbiguous == true)
        {
            return new FitReading(null, named.ToProblem("part"));
        }

        var neighbours = new Dictionary<string, Part?>(StringComparer.Ordinal);
        foreach (var (position, written) in request.Neighbours)
        {
            var neighbour = written == Part.None ? null : NamedPart.Find(written, null, parts);
            if (neighbour is not null && FindProblem(neighbour, position) is { } problem)
            {
                return new FitReading(null, problem);
            }

            neighbours[position] = neighbour?.Part;
        }

        var question = new FitQuestion(
            request.Variant ?? "", request.Position ?? "", named?.Part, named?.Written, string.IsNullOrEmpty(request.From) ? null : request.From,
            BuildDate.Find(request.Built ?? ""), CommonRules.FindWhole(request.Serial), neighbours);
        return new FitReading(question, null);
    }

    // The part asked about may be unknown, that is an answer; a neighbour that nobody knows would silently be no neighbour.
    private static Problem? FindProblem(NamedPart neighbour, string position) => neighbour.Candidates.Count switch
    {
        0 => Problem.Of("bad-question", new FieldError("with", $"{position}={neighbour.Written}", "a number that the base knows, or none", "look it up at /api/parts?q=")),
        1 => null,
        _ => neighbour.ToProblem("with"),
    };
}

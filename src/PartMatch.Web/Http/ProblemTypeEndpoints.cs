using Microsoft.AspNetCore.Http.HttpResults;

namespace PartMatch.Web.Http;

/// <summary>Explains each sort of problem at the address that its <c>type</c> names.</summary>
internal static class ProblemTypeEndpoints
{
    public static void MapProblemTypes(this IEndpointRouteBuilder app) =>
        app.MapGroup("/problems").CheckRequests().MapGet("/{code}", Explain).WithName("ExplainProblem").WithTags("problems")
            .WithSummary("What a sort of problem means, as text")
            .Produces(StatusCodes.Status200OK, contentType: "text/plain");

    private static Results<ContentHttpResult, Absent> Explain(string code) => ProblemTypes.Find(code) is { } type
        ? TypedResults.Text($"{type.Title} (HTTP {type.Status})\n\n{type.Explanation}\n")
        : new Absent(new FieldError("code", code, $"one of {string.Join(", ", ProblemTypes.All.Select(known => known.Code))}"));
}

using System.Globalization;
using Microsoft.Net.Http.Headers;
using PartMatch.Core.Builds;
using PartMatch.Storage.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Builds;

/// <summary>The document of a build as it was sent: read strictly, then held against the rules and the base.</summary>
internal sealed class BuildBody(BuildNames names)
{
    public const string Json = "application/json";

    private const int MaxErrors = 20;

    private static readonly BuildDocumentRules _rules = new();

    /// <summary>The build, or why it is none.</summary>
    public async Task<(Build? Build, Problem? Problem)> ReadAsync(HttpRequest request, CancellationToken cancellation)
    {
        var type = MediaTypeHeaderValue.TryParse(request.ContentType, out var parsed) ? parsed.MediaType.Value : null;
        if (!string.Equals(type, Json, StringComparison.OrdinalIgnoreCase))
        {
            return (null, Problem.Of(
                "wrong-media-type", new FieldError("Content-Type", string.IsNullOrEmpty(type) ? "nothing" : type, Json, "a build is one JSON document")));
        }

        using var sent = new MemoryStream();
        await request.Body.CopyToAsync(sent, cancellation);
        return Read(sent.ToArray());
    }

    public (Build? Build, Problem? Problem) Read(ReadOnlyMemory<byte> document) => BuildDocument.Read(document) switch
    {
        BuildReading.Read read => FindProblem(read.Build) is { } problem ? (null, problem) : (read.Build, null),
        BuildReading.Faulty faulty => (null, Problem.Of(
            "bad-build", [.. faulty.Faults.Select(fault => new FieldError(fault.Field, fault.Found, fault.Expected, fault.Mend))])),
        BuildReading.NoJson none => (null, Problem.Of("bad-request", new FieldError(
            "body", string.Create(CultureInfo.InvariantCulture, $"what cannot be read at line {none.Line}, byte {none.Byte}"), "one JSON document",
            none.Reason))),
        var other => throw new InvalidOperationException($"A build was read as {other.GetType().Name}, which no answer names."),
    };

    /// <summary>What of a build that could be read does not hold; null where all of it does.</summary>
    public Problem? FindProblem(Build build)
    {
        var result = _rules.Validate(build);
        if (!result.IsValid)
        {
            // Quantities have sorts of problems of their own: which horsepower?
            var codes = result.Errors.Select(failure => failure.ErrorCode).Distinct().ToList();
            var problem = Problem.Of(
                codes is [var only] && ProblemTypes.Find(only) is not null ? only : "bad-build",
                [.. result.Errors.Take(MaxErrors).Select(BuildProblems.ToError)]);
            return result.Errors is [{ CustomState: Mending { Title: { } title } }] ? problem with { Title = title } : problem;
        }

        return names.FaultsOf(build) is { Count: > 0 } faults ? Problem.Of("bad-build", [.. faults.Take(MaxErrors)]) : null;
    }
}

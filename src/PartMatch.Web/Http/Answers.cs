using System.Globalization;
using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using PartMatch.Core.Sums;

namespace PartMatch.Web.Http;

/// <summary>A problem as a route's answer. The closed set of cases below gives each status a name in the signatures of the routes.</summary>
public abstract class ProblemAnswer(Problem problem) : IResult, IStatusCodeHttpResult, IValueHttpResult
{
    public Problem Problem { get; } = problem;

    public int? StatusCode => Problem.Status;

    public object? Value => Problem;

    public virtual Task ExecuteAsync(HttpContext httpContext) => Problems.WriteAsync(httpContext, Problem);

    /// <summary>Adds to a route's document the problems that stand before its handler.</summary>
    internal static void Describe(IEndpointConventionBuilder route, params int[] statuses) =>
        route.Add(builder => Array.ForEach(statuses, status => Describe(builder, status)));

    internal static void Describe(EndpointBuilder builder, int status) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(status, typeof(Problem), [Problem.ContentType]));
}

/// <summary>400: the question names something that cannot be asked.</summary>
public sealed class Refused(Problem problem) : ProblemAnswer(problem), IEndpointMetadataProvider
{
    /// <summary>A question about sums that has no honest answer.</summary>
    internal static Refused Of(SumRefused refused) =>
        new(Problem.Of(refused.Code, new FieldError(refused.Field, refused.Found, refused.Expected, refused.Mend)) with { Detail = refused.Reason });

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) => Describe(builder, StatusCodes.Status400BadRequest);
}

/// <summary>404: the base does not hold what the path or the question names.</summary>
public sealed class Absent(params IReadOnlyList<FieldError> errors) : ProblemAnswer(Problem.Of("not-found", errors)), IEndpointMetadataProvider
{
    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) => Describe(builder, StatusCodes.Status404NotFound);
}

/// <summary>409: what is there stands against it; nothing was stored.</summary>
public sealed class Clash(Problem problem) : ProblemAnswer(problem), IEndpointMetadataProvider
{
    public Clash(params IReadOnlyList<FieldError> errors)
        : this(Problem.Of("conflict", errors))
    {
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) => Describe(builder, StatusCodes.Status409Conflict);
}

/// <summary>412: somebody else has changed it meanwhile; or 428: it was not said which version was seen. Nothing was stored.</summary>
public sealed class Stale(Problem problem) : ProblemAnswer(problem), IEndpointMetadataProvider
{
    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        Describe(builder, StatusCodes.Status412PreconditionFailed);
        Describe(builder, StatusCodes.Status428PreconditionRequired);
    }
}

/// <summary>503: not now; when to ask again stands in Retry-After.</summary>
public sealed class Busy(Problem problem, int retryAfterSeconds) : ProblemAnswer(problem), IEndpointMetadataProvider
{
    public override Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Response.Headers.RetryAfter = retryAfterSeconds.ToString(CultureInfo.InvariantCulture);
        return base.ExecuteAsync(httpContext);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) => Describe(builder, StatusCodes.Status503ServiceUnavailable);
}

/// <summary>415: the body is of another kind than the route reads.</summary>
public sealed class WrongMediaType(Problem problem) : ProblemAnswer(problem), IEndpointMetadataProvider
{
    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) => Describe(builder, StatusCodes.Status415UnsupportedMediaType);
}

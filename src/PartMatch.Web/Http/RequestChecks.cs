using System.Reflection;
using FluentValidation;
using FluentValidation.Results;

namespace PartMatch.Web.Http;

/// <summary>Stands before every route of a group: only known query parameters, each once unless it may repeat, and only values that the validator passes.</summary>
internal static class RequestChecks
{
    private const int MaxErrors = 20;

    public static RouteGroupBuilder CheckRequests(this RouteGroupBuilder group)
    {
        group.AddEndpointFilterFactory((handler, next) =>
        {
            var parameters = handler.MethodInfo.GetParameters();
            var place = Array.FindIndex(parameters, parameter => parameter.GetCustomAttribute<AsParametersAttribute>() is not null);
            var shape = RequestShape.Of(place < 0 ? null : parameters[place].ParameterType);
            return async call => Check(call, shape, place) is { } problem ? new Refused(problem) : await next(call);
        });
        ProblemAnswer.Describe(group, StatusCodes.Status400BadRequest);
        return group;
    }

    private static Problem? Check(EndpointFilterInvocationContext call, RequestShape shape, int place)
    {
        FieldError[] faults = [.. shape.FaultsOf(call.HttpContext.Request.Query).Take(MaxErrors)];
        if (faults.Length > 0)
        {
            return Problem.Of("bad-question", faults);
        }

        // An argument the binder could not make is null: its own refusal follows further in.
        return place >= 0 && call.Arguments[place] is { } request && shape.FindValidator(call.HttpContext.RequestServices) is { } validator
            ? ToProblem(validator.Validate(new ValidationContext<object>(request)), shape)
            : null;
    }

    private static Problem? ToProblem(ValidationResult result, RequestShape shape)
    {
        if (result.IsValid)
        {
            return null;
        }

        FieldError[] errors = [.. result.Errors.Take(MaxErrors).Select(failure => ToError(failure, shape))];
        var code = result.Errors[0].ErrorCode;
        var problem = Problem.Of(ProblemTypes.Find(code) is null ? "bad-question" : code, errors);
        return result.Errors[0].CustomState is Mending { Title: { } title } ? problem with { Title = title } : problem;
    }

    private static string Shown(string? found) =>
        string.IsNullOrEmpty(found) ? "nothing" : string.IsNullOrWhiteSpace(found) ? "nothing but blanks" : found;

    private static FieldError ToError(ValidationFailure failure, RequestShape shape)
    {
        var name = shape.NameOf(failure.PropertyName.Split('[')[0]);
        var mending = failure.CustomState as Mending ?? new Mending(failure.ErrorMessage);
        return new FieldError(name, mending.Found ?? Shown(failure.AttemptedValue as string), mending.Expected, mending.Mend);
    }
}

/// <summary>What a rule has to say when it is broken.</summary>
/// <param name="Expected">What would have passed.</param>
/// <param name="Mend">How to mend it.</param>
/// <param name="Found">What was found, where the value itself does not say it.</param>
/// <param name="Title">Title of the problem, where the type's own is too general.</param>
internal sealed record Mending(string Expected, string? Mend = null, string? Found = null, string? Title = null);

internal static class MendingRules
{
    /// <summary>Says what would have passed, and how to mend it.</summary>
    public static IRuleBuilderOptions<T, TValue> Otherwise<T, TValue>(this IRuleBuilderOptions<T, TValue> rule, string expected, string? mend = null) =>
        rule.WithState(_ => new Mending(expected, mend));
}

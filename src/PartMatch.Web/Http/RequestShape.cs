using System.Reflection;
using FluentValidation;
using Microsoft.AspNetCore.Mvc;

namespace PartMatch.Web.Http;

/// <summary>The query parameters of a request record.</summary>
internal sealed class RequestShape
{
    private static readonly RequestShape _nothingToAsk = new([], null);

    private readonly Dictionary<string, QueryParameter> _parameters;
    private readonly Type? _validator;

    private RequestShape(IEnumerable<QueryParameter> parameters, Type? validator)
    {
        _parameters = parameters.ToDictionary(parameter => parameter.Name, StringComparer.OrdinalIgnoreCase);
        _validator = validator;
    }

    private sealed record QueryParameter(string Name, string Property, bool MayRepeat);

    /// <param name="request">A record whose query properties carry <see cref="FromQueryAttribute"/>; null for a route that takes no query.</param>
    public static RequestShape Of(Type? request) => request is null
        ? _nothingToAsk
        : new RequestShape(
            request.GetProperties()
                .Select(property => (property, query: property.GetCustomAttribute<FromQueryAttribute>()))
                .Where(pair => pair.query is not null)
                .Select(pair => new QueryParameter(pair.query?.Name ?? pair.property.Name, pair.property.Name, pair.property.PropertyType.IsArray)),
            typeof(IValidator<>).MakeGenericType(request));

    public IValidator? FindValidator(IServiceProvider services) => _validator is null ? null : (IValidator?)services.GetService(_validator);

    /// <summary>The name in the query of a property of the record; a property that is no query parameter keeps its own.</summary>
    public string NameOf(string property) =>
        _parameters.Values.FirstOrDefault(parameter => parameter.Property == property)?.Name ?? char.ToLowerInvariant(property[0]) + property[1..];

    /// <summary>Unknown parameters, and known ones that were repeated and may not be, in the order sent.</summary>
    public IEnumerable<FieldError> FaultsOf(IQueryCollection query)
    {
        foreach (var (name, values) in query)
        {
            if (!_parameters.TryGetValue(name, out var parameter))
            {
                yield return Unknown(name);
            }
            else if (values.Count > 1 && !parameter.MayRepeat)
            {
                yield return new FieldError(parameter.Name, string.Join(" and ", values.ToArray()), "one value", $"give {parameter.Name}= once");
            }
        }
    }

    private FieldError Unknown(string name)
    {
        var known = _parameters.Keys.Order(StringComparer.Ordinal).ToArray();
        return new FieldError(
            name, name.Length == 0 ? "a parameter without a name" : name,
            known.Length == 0 ? "no query parameters" : string.Join(", ", known),
            Nearest.Find(name, known) is { } near ? $"did you mean {near}?" : known.Length == 0 ? "leave it out" : "leave it out, or take one of these");
    }
}

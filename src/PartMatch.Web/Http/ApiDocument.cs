using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Mvc.ApiExplorer;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace PartMatch.Web.Http;

/// <summary>The OpenAPI document of the routes: written to api-docs by the build, and served as <c>/openapi.json</c>.</summary>
internal static class ApiDocument
{
    /// <summary>The build names the file after any other name than this one.</summary>
    public const string Name = "v1";

    public static void Apply(OpenApiOptions options)
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "PartMatch",
                Version = "1",
                Description = "Will it fit, does it run the same, what else must change, what can it be mistaken for, is it big enough: always with the reasons.",
            };

            // The address of one server says nothing about the routes and would differ with every machine.
            document.Servers = [];
            foreach (var schema in document.Components?.Schemas?.Values ?? [])
            {
                TakeOutNull(schema);
            }

            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            MarkRequired(operation, context.Description);
            return Task.CompletedTask;
        });
        options.AddSchemaTransformer((schema, context, _) =>
        {
            NameRequired(schema, context.JsonTypeInfo);
            return Task.CompletedTask;
        });
    }

    // Query parameters are bound as optional, so that the validators can name what is missing; the document tells which are.
    private static void MarkRequired(OpenApiOperation operation, ApiDescription description)
    {
        var required = description.ParameterDescriptions
            .Where(parameter => parameter.ModelMetadata?.ValidatorMetadata.OfType<RequiredAttribute>().Any() is true)
            .Select(parameter => parameter.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var parameter in (operation.Parameters ?? []).OfType<OpenApiParameter>().Where(parameter => required.Contains(parameter.Name ?? "")))
        {
            parameter.Required = true;
        }
    }

    /// <summary>JSON leaves out what is not recorded: a member that can be null is optional, every other one is always there.</summary>
    private static void NameRequired(OpenApiSchema schema, JsonTypeInfo type)
    {
        if (type.Kind == JsonTypeInfoKind.Object && schema.Properties is { Count: > 0 })
        {
            schema.Required = type.Properties.Where(property => !IsNullable(property)).Select(property => property.Name).ToHashSet(StringComparer.Ordinal);
        }
    }

    private static bool IsNullable(JsonPropertyInfo property) =>
        property.PropertyType.IsValueType ? Nullable.GetUnderlyingType(property.PropertyType) is not null : property.IsGetNullable;

    /// <summary>No member is ever null, so no schema allows it.</summary>
    private static void TakeOutNull(IOpenApiSchema schema)
    {
        // A code that is null somewhere has null among its values, as a null reference.
        while (schema.Enum?.Remove(null!) is true)
        {
        }

        // Members are only ever added: a reader has to let new ones pass.
        if (schema is OpenApiSchema { Properties: not null } answer)
        {
            answer.AdditionalPropertiesAllowed = true;
        }

        foreach (var (name, property) in (schema.Properties ?? new Dictionary<string, IOpenApiSchema>()).ToList())
        {
            if (property is not OpenApiSchema own)
            {
                continue;
            }

            own.Type &= ~JsonSchemaType.Null;
            if (own.OneOf is [{ Type: JsonSchemaType.Null }, var only] && schema.Properties is { } properties)
            {
                properties[name] = only;
            }
        }
    }
}

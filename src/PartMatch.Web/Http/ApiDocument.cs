using System.Text.Json.Nodes;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace PartMatch.Web.Http;

/// <summary>The OpenAPI document of the routes: written to api-docs by the build, and served as <c>/openapi.json</c>.</summary>
internal static class ApiDocument
{
    public const string Name = "openapi";

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
            return Task.CompletedTask;
        });
    }
}

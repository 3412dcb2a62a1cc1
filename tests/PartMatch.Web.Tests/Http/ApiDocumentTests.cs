using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace PartMatch.Web.Tests.Http;

/// <summary>The documents under api-docs, held against the running program.</summary>
public sealed partial class ApiDocumentTests(SmallBase server)
{
    private static readonly string _docs = Path.Combine(Repository.Folder, "api-docs");

    [GeneratedRegex("PartMatch:[A-Z][A-Za-z]+")]
    private static partial Regex Setting();

    [Fact]
    public async Task The_document_in_the_tree_is_what_the_program_serves()
    {
        using var client = server.CreateClient();
        var served = JsonNode.Parse(await client.GetStringAsync(new Uri("/openapi.json", UriKind.Relative), TestContext.Current.CancellationToken));
        var kept = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(_docs, "openapi.json"), TestContext.Current.CancellationToken));

        Assert.True(JsonNode.DeepEquals(served, kept), "api-docs/openapi.json is not what the code generates: build src/PartMatch.Web and commit it.");
    }

    [Fact]
    public void Every_route_has_an_operation_id_a_summary_and_described_answers()
    {
        foreach (var (route, operation) in Operations())
        {
            Assert.True(operation["operationId"]?.GetValue<string>().Length > 0, $"{route} has no name");
            Assert.True(operation["summary"]?.GetValue<string>().Length > 0, $"{route} has no summary");
            Assert.True(operation["responses"]?["400"] is not null, $"{route} does not say that it refuses unknown parameters");
            foreach (var parameter in operation["parameters"]?.AsArray() ?? [])
            {
                Assert.True(parameter?["in"]?.GetValue<string>() == "path" || parameter?["description"] is not null, $"{route} does not describe {parameter?["name"]}");
            }
        }
    }

    [Fact]
    public void Every_route_has_a_page_under_api_docs()
    {
        var pages = Pages();
        foreach (var (route, _) in Operations())
        {
            Assert.True(pages.Contains($"`{route}`", StringComparison.Ordinal), $"no page under api-docs/ has a section for `{route}`");
        }
    }

    [Fact]
    public void Every_setting_has_a_section_under_api_docs()
    {
        var settings = Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src", "PartMatch.Web"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(file => Setting().Matches(File.ReadAllText(file)).Select(match => match.Value))
            .Distinct().ToList();

        Assert.Contains("PartMatch:Token", settings);
        Assert.All(settings, setting => Assert.Contains($"`{setting}`", Pages(), StringComparison.Ordinal));
    }

    private static IEnumerable<(string Route, JsonNode Operation)> Operations()
    {
        var document = JsonNode.Parse(File.ReadAllText(Path.Combine(_docs, "openapi.json")));
        foreach (var (path, methods) in document?["paths"]?.AsObject() ?? [])
        {
            foreach (var (method, operation) in methods?.AsObject() ?? [])
            {
                yield return ($"{method.ToUpperInvariant()} {path}", operation ?? new JsonObject());
            }
        }
    }

    private static string Pages() => string.Join('\n', Directory.EnumerateFiles(_docs, "*.md").Select(File.ReadAllText));
}

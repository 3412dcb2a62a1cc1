using System.Net.Http.Headers;
using System.Text.Json;
using System.Text.RegularExpressions;
using PartMatch.Web.Http;

namespace PartMatch.Web.Tests.Seed;

/// <summary>The examples in api-docs are shortened answers of the demo data: every member that stands there stands in the answer, with the same value.</summary>
public sealed partial class DocsExamplesTests(SeedServer server)
{
    private static readonly string _docs = Path.Combine(Repository.Folder, "api-docs");

    [GeneratedRegex(@"```http\nGET (?<address>\S+)\n```\n\n```json\n(?<answer>.*?)\n```", RegexOptions.Singleline)]
    private static partial Regex Example();

    [GeneratedRegex(
        @"```http\n(?<method>POST|PUT|DELETE) (?<address>\S+)\n((?<header>[A-Za-z-]+: [^\n]*)\n)*(\n(?<body>\{.*?\n?\})\n)?```\n\n```json\n(?<answer>.*?)\n```", RegexOptions.Singleline)]
    private static partial Regex WriteExample();
    /// <summary>A file written in base64, and the command that sends it.</summary>
    [GeneratedRegex(
        @"```sh\nbase64 -d >(?<file>\S+) <<'(?<end>\w+)'\n(?<content>\S+)\n\k<end>\ncurl -X POST -H 'Content-Type: (?<type>\S+)' --data-binary @\k<file> http://127\.0\.0\.1:5080(?<address>\S+)\n```\n\n```json\n(?<answer>.*?)\n```",
        RegexOptions.Singleline)]
    private static partial Regex SendingExample();

    public static TheoryData<string, string, string, string, string> SendingExamples
    {
        get
        {
            var rows = new TheoryData<string, string, string, string, string>();
            foreach (var page in Directory.EnumerateFiles(_docs, "*.md").Order(StringComparer.Ordinal))
            {
                foreach (Match example in SendingExample().Matches(File.ReadAllText(page)))
                {
                    rows.Add(Path.GetFileName(page), example.Groups["address"].Value, example.Groups["type"].Value, example.Groups["content"].Value, example.Groups["answer"].Value);
                }
            }

            return rows;
        }
    }

    public static TheoryData<string, string, string> Examples
    {
        get
        {
            var rows = new TheoryData<string, string, string>();
            foreach (var page in Directory.EnumerateFiles(_docs, "*.md").Order(StringComparer.Ordinal))
            {
                foreach (Match example in Example().Matches(File.ReadAllText(page)))
                {
                    rows.Add(Path.GetFileName(page), example.Groups["address"].Value, example.Groups["answer"].Value);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task An_example_is_what_the_program_answers(string page, string address, string example)
    {
        using var client = server.CreateClient();
        var answer = await client.GetStringAsyncWhateverStatus(address);

        var differences = Differences(JsonDocument.Parse(example).RootElement, JsonDocument.Parse(answer).RootElement, "$").ToList();

        Assert.True(differences.Count == 0, $"{page}: {address}\n{string.Join('\n', differences)}");
    }

    /// <summary>Pages whose examples change the base are played through in their order, each on a base of its own.</summary>
    [Theory]
    [InlineData("builds.md", 6)]
    [InlineData("donors.md", 1)]
    [InlineData("editing.md", 6)]
    [InlineData("history.md", 2)]
    [InlineData("items.md", 1)]
    [InlineData("listings.md", 2)]
    [InlineData("offers.md", 1)]
    public async Task Examples_of_changes_are_what_the_program_answers(string page, int count)
    {
        await using var own = new SeedServer();
        await own.InitializeAsync();
        using var client = own.CreateClient();
        var examples = WriteExample().Matches(await File.ReadAllTextAsync(Path.Combine(_docs, page), TestContext.Current.CancellationToken));
        Assert.True(examples.Count >= count, $"{examples.Count} examples of changes on {page}");
        foreach (Match example in examples)
        {
            using var request = new HttpRequestMessage(new HttpMethod(example.Groups["method"].Value), example.Groups["address"].Value)
            {
                Content = example.Groups["body"].Success ? new StringContent(example.Groups["body"].Value, new System.Net.Http.Headers.MediaTypeHeaderValue("application/json")) : null,
            };
            foreach (var header in example.Groups["header"].Captures.Select(header => header.Value.Split(": ", 2)).Where(header => header[0] != "Content-Type"))
            {
                request.Headers.TryAddWithoutValidation(header[0], header[1]);
            }

            using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
            var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            var differences = Differences(JsonDocument.Parse(example.Groups["answer"].Value).RootElement, JsonDocument.Parse(text).RootElement, "$").ToList();
            Assert.True(differences.Count == 0, $"{page}: {request.Method} {request.RequestUri}\n{string.Join('\n', differences)}");
        }
    }

    [Theory]
    [MemberData(nameof(SendingExamples))]
    public async Task An_example_that_sends_a_file_is_what_the_program_answers(string page, string address, string type, string content, string example)
    {
        await using var own = new PartMatchServer();
        using var client = own.CreateClient();
        using var body = new ByteArrayContent(Convert.FromBase64String(content)) { Headers = { ContentType = new MediaTypeHeaderValue(type) } };
        using var answer = await client.PostAsync(new Uri(address, UriKind.Relative), body, TestContext.Current.CancellationToken);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        var differences = Differences(JsonDocument.Parse(example).RootElement, JsonDocument.Parse(text).RootElement, "$").ToList();

        Assert.True(differences.Count == 0, $"{page}: {address}\n{string.Join('\n', differences)}");
    }

    [Fact]
    public void Every_feature_page_has_an_example() =>
        Assert.Equal(
            ["books.md", "builds.md", "buying.md", "compare.md", "compression.md", "consistency.md", "donors.md", "editing.md", "families.md", "fit.md", "fuel-supply.md", "health.md", "history.md",
                "images.md", "injectors.md", "items.md", "look-alikes.md", "offers.md", "parts.md", "problems.md", "sellers.md", "tell-apart.md",
                "tightening.md", "valve-timing.md", "work-order.md"],
            Examples.Select(row => row.Data.Item1).Concat(SendingExamples.Select(row => row.Data.Item1)).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void Every_sort_of_problem_is_in_the_table_of_problems()
    {
        var page = File.ReadAllText(Path.Combine(_docs, "problems.md"));

        Assert.All(ProblemTypes.All, type => Assert.Contains($"| `{type.Code}` | {type.Status} |", page, StringComparison.Ordinal));
    }

    /// <summary>Where the example says something that the answer does not. A list of the example is the beginning of the answer's.</summary>
    private static IEnumerable<string> Differences(JsonElement example, JsonElement answer, string place) => (example.ValueKind, answer.ValueKind) switch
    {
        (JsonValueKind.Object, JsonValueKind.Object) => example.EnumerateObject().SelectMany(member =>
            answer.TryGetProperty(member.Name, out var value) ? Differences(member.Value, value, $"{place}.{member.Name}") : [$"{place}.{member.Name} is not in the answer"]),
        (JsonValueKind.Array, JsonValueKind.Array) when example.GetArrayLength() <= answer.GetArrayLength() && (example.GetArrayLength() > 0 || answer.GetArrayLength() == 0) =>
            example.EnumerateArray().Zip(answer.EnumerateArray()).SelectMany((pair, index) => Differences(pair.First, pair.Second, $"{place}[{index}]")),
        _ => JsonElement.DeepEquals(example, answer) ? [] : [$"{place} is {answer.GetRawText()}, the page says {example.GetRawText()}"],
    };
}

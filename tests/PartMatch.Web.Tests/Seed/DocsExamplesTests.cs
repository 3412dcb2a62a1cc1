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

    [Fact]
    public void Every_feature_page_has_an_example() =>
        Assert.Equal(
            ["books.md", "compare.md", "consistency.md", "families.md", "fit.md", "health.md", "injectors.md", "look-alikes.md", "parts.md", "problems.md", "tell-apart.md"],
            Examples.Select(row => row.Data.Item1).Distinct());

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

using System.Net;
using System.Text.Json;

namespace PartMatch.Web.Tests;

/// <summary>Asks a route and reads its JSON, checking what every answer has to keep.</summary>
internal static class Json
{
    public static async Task<JsonElement> AskAsync(this HttpClient client, string address)
    {
        using var answer = await client.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{address} answered {(int)answer.StatusCode}: {text}");
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
        return JsonDocument.Parse(text).RootElement;
    }

    public static async Task<string> GetStringAsyncWhateverStatus(this HttpClient client, string address)
    {
        using var answer = await client.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        return await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Expects a problem document of that status and type.</summary>
    public static async Task<JsonElement> RefuseAsync(this HttpClient client, string address, HttpStatusCode status, string type)
    {
        using var answer = await client.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        return await answer.ProblemAsync(status, type);
    }

    public static async Task<JsonElement> ProblemAsync(this HttpResponseMessage answer, HttpStatusCode status, string type)
    {
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.StatusCode == status, $"{answer.RequestMessage?.RequestUri} answered {(int)answer.StatusCode}, expected {(int)status}: {text}");
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = JsonDocument.Parse(text).RootElement;
        Assert.Equal($"/problems/{type}", problem.GetProperty("type").GetString());
        Assert.Equal((int)status, problem.GetProperty("status").GetInt32());
        Assert.NotEmpty(problem.Text("title"));
        Assert.Equal(JsonValueKind.Array, problem.GetProperty("errors").ValueKind);
        return problem;
    }

    public static string Text(this JsonElement element, string member) => element.GetProperty(member).GetString() ?? "";

    public static IReadOnlyList<JsonElement> List(this JsonElement element, string member) => [.. element.GetProperty(member).EnumerateArray()];

    public static IReadOnlyList<string> Texts(this JsonElement element, string member) => [.. element.List(member).Select(item => item.GetString() ?? "")];

    public static bool Has(this JsonElement element, string member) => element.TryGetProperty(member, out _);

    /// <summary>The one error of a problem.</summary>
    public static JsonElement OnlyError(this JsonElement problem) => Assert.Single(problem.List("errors"));
}

namespace PartMatch.Web.Tests.Health;

public sealed class HealthEndpointsTests(SmallBase server)
{
    [Fact]
    public async Task Health_says_ok_and_how_many_families_there_are()
    {
        using var client = server.CreateClient();
        var answer = await client.AskAsync("/api/health");

        Assert.Equal("ok", answer.Text("status"));
        Assert.Equal(1, answer.GetProperty("families").GetInt32());
        Assert.Matches(@"^\d+\.\d+\.\d+$", answer.Text("version"));
    }
}

using System.Text.RegularExpressions;
using PartMatch.Core.Fit;

namespace PartMatch.Web.Tests.Seed;

/// <summary>The commands in README.md do what they say.</summary>
public sealed partial class ReadmeTests(SeedServer server)
{
    [GeneratedRegex(@"curl '?http://127\.0\.0\.1:5080(?<address>/[^'\s]*)")]
    private static partial Regex Command();

    public static TheoryData<string> Addresses =>
        [.. Command().Matches(File.ReadAllText(Path.Combine(Repository.Folder, "README.md"))).Select(match => match.Groups["address"].Value)];

    [Theory]
    [MemberData(nameof(Addresses))]
    public async Task A_command_of_the_readme_is_answered(string address)
    {
        using var client = server.CreateClient();

        Assert.NotEmpty((await client.AskAsync(address)).Text("permalink"));
    }

    [Fact]
    public async Task The_injector_of_the_readme_has_the_size_it_says()
    {
        using var client = server.CreateClient();
        var answer = await client.AskAsync(Addresses.Select(row => row.Data).Single(address => address.StartsWith("/api/injectors", StringComparison.Ordinal)));

        // By pencil, as the readme shows it: 59.4 kg/h ÷ (3 × 0.799) = 413 g/min; ÷ √(0.745 × 0.684) g/cm3 = 579 cm3/min = 9.64e-6 m3/s.
        var rated = answer.GetProperty("needPerInjector").GetProperty("ratedVolume").GetProperty("expected").GetDouble();
        Assert.Equal(578.7, rated * 60e6, 1.0);
        Assert.Contains("579 cm³/min", await File.ReadAllTextAsync(Path.Combine(Repository.Folder, "README.md"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_oil_filter_of_the_readme_was_found_to_do_what_it_says()
    {
        using var client = server.CreateClient();
        var answer = await client.AskAsync(Addresses.Select(row => row.Data).Single(address => address.Contains("oil-filter", StringComparison.Ordinal)));

        Assert.Equal("mounts-but-runs-differently", answer.Text("headline"));
        Assert.Equal("documented", answer.Text("sureness"));
        Assert.Equal("same", answer.GetProperty("disagreements")[0].Text("says"));
        var ran = answer.GetProperty("findings").EnumerateArray().Single(finding => finding.Text("axis") == "runs").GetProperty("evidence");
        Assert.Equal(310, ran.GetProperty("details").GetProperty("hours").GetInt32()); // findings.csv fi-0047, sources.csv ev-0082
    }

    [Theory]
    [InlineData("README.md")]
    [InlineData("api-docs/fit.md")]
    public async Task The_words_for_sureness_mean_what_the_answers_say(string page)
    {
        var text = await File.ReadAllTextAsync(Path.Combine(Repository.Folder, page), TestContext.Current.CancellationToken);

        Assert.All(SurenessMeaning.All, meaning => Assert.Contains($"| {meaning.Text} |", text, StringComparison.Ordinal));
    }
}

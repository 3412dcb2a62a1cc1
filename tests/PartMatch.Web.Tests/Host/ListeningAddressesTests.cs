using Microsoft.Extensions.Configuration;
using PartMatch.Web.Host;

namespace PartMatch.Web.Tests.Host;

public sealed class ListeningAddressesTests
{
    [Theory]
    [InlineData("http://127.0.0.1:5080")]
    [InlineData("http://127.8.9.10:5080")]
    [InlineData("http://localhost:0")]
    [InlineData("http://LOCALHOST:80")]
    [InlineData("https://[::1]:5443")]
    [InlineData("http://[::ffff:127.0.0.1]:5080")]
    [InlineData("http://unix:/run/partmatch.sock")]
    public void Loopback_needs_no_token(string address) =>
        Assert.Null(ListeningAddresses.Refusal([new GivenAddress("urls", address)], hasToken: false));

    [Theory]
    [InlineData("http://0.0.0.0:5080")]
    [InlineData("http://[::]:5080")]
    [InlineData("http://*:5080")]
    [InlineData("http://+:5080")]
    [InlineData("http://192.0.2.7:5080")]
    [InlineData("http://[2001:db8::7]:5080")]
    [InlineData("http://localhost.example:5080")]
    [InlineData("http://127.0.0.1.example:5080")]
    [InlineData("http://workshop:5080")]
    public void Any_other_address_needs_one(string address)
    {
        Assert.Contains(address, ListeningAddresses.Refusal([new GivenAddress("urls", address)], hasToken: false), StringComparison.Ordinal);
        Assert.Null(ListeningAddresses.Refusal([new GivenAddress("urls", address)], hasToken: true));
    }

    [Theory]
    [InlineData("")]
    [InlineData("5080")]
    [InlineData("127.0.0.1:5080")]
    [InlineData("http://127.0.0.1:port")]
    public void What_is_no_address_is_refused_with_or_without_a_token(string address)
    {
        Assert.NotNull(ListeningAddresses.Refusal([new GivenAddress("urls", address)], hasToken: false));
        Assert.NotNull(ListeningAddresses.Refusal([new GivenAddress("urls", address)], hasToken: true));
    }

    [Fact]
    public void Ports_count_only_where_no_urls_are_given_as_the_server_reads_them()
    {
        Assert.Equal(["http://127.0.0.1:1"], Read(("urls", "http://127.0.0.1:1"), ("http_ports", "8080")));
        Assert.Equal(["http://*:8080", "http://*:8081", "https://*:8443"], Read(("http_ports", "8080;8081"), ("https_ports", "8443")));
        Assert.Empty(Read());
    }

    private static IEnumerable<string> Read(params (string Name, string Value)[] settings) => ListeningAddresses
        .Read(new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(pair => pair.Name, pair => (string?)pair.Value)).Build())
        .Select(given => given.Address);
}

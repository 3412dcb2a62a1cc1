namespace PartMatch.Web.Tests.Builds;

/// <summary>Builds of the small book, and how they are sent.</summary>
internal static class SmallBuild
{
    public const string Cart =
        """
        {"code":"cart","title":"A cart from a pump set","family":"duo-2",
         "donor":{"variant":"a","built":"2016-05","states":[{"position":"coolant-pump","state":"damaged","sellsFor":"5.00"}]},
         "target":"b","currency":"EUR","goal":{"power":"40 kW","speed":"5500/min"},
         "wishes":[{"position":"pump-bolt","keep":"keep"},{"group":"cooling","like":["b"],"refuse":["ardlow:12/34"]}],
         "inHand":[{"part":"ardlow:77-1","pieces":2}],"rates":[{"currency":"GBP","is":"1.17"}],"budget":"400.00","neededBy":"2026-12-24","startOn":"2026-12-01"}
        """;

    /// <summary>The cart with one text of it replaced by another.</summary>
    public static string With(string was, string becomes)
    {
        Assert.Contains(was, Cart, StringComparison.Ordinal);
        return Cart.Replace(was, becomes, StringComparison.Ordinal);
    }

    /// <summary>As another build.</summary>
    public static string Named(string code) => With("\"code\":\"cart\"", $"\"code\":\"{code}\"");

    public static async Task StoreAsync(this HttpClient client, string document)
    {
        using var stored = await client.SendAsync(HttpMethod.Post, "/api/builds", document);
        Assert.Equal(System.Net.HttpStatusCode.Created, stored.StatusCode);
    }

    public static async Task<HttpResponseMessage> SendAsync(
        this HttpClient client, HttpMethod method, string address, string? body = null, string? version = null)
    {
        using var request = new HttpRequestMessage(method, address)
        {
            Content = body is null ? null : new StringContent(body, System.Text.Encoding.UTF8, "application/json"),
        };
        if (version is not null)
        {
            request.Headers.TryAddWithoutValidation("If-Match", version == "*" ? version : $"\"{version}\"");
        }

        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}

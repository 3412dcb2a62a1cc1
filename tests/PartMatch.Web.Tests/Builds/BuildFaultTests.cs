using System.Net;

namespace PartMatch.Web.Tests.Builds;

/// <summary>Each field of a build that cannot be as it was sent is told with its place; nothing is stored.</summary>
public sealed class BuildFaultTests(SmallBase server)
{
    [Theory]
    [InlineData("\"code\":\"cart\"", "\"code\":\"Cart 1\"", "code", "Cart 1")]
    [InlineData("A cart from a pump set", " ", "title", "nothing")]
    [InlineData("\"family\":\"duo-2\"", "\"family\":\"duo-3\"", "family", "duo-3", "did you mean duo-2?")]
    [InlineData("\"variant\":\"a\"", "\"variant\":\"z\"", "donor.variant", "z")]
    [InlineData("\"built\":\"2016-05\"", "\"built\":\"2016-13\"", "donor.built", "2016-13")]
    [InlineData("\"built\":\"2016-05\"", "\"serial\":-1", "donor.serial", "-1")]
    [InlineData("\"built\":\"2016-05\"", "\"price\":\"38,00\"", "donor.price", "38,00")]
    [InlineData("\"sellsFor\":\"5.00\"", "\"sellsFor\":\"-5.00\"", "donor.states[0].sellsFor", "-5.00")]
    [InlineData("\"sellsFor\":\"5.00\"", "\"allowance\":\"5.001\"", "donor.states[0].allowance", "5.001")]
    [InlineData("\"sellsFor\":\"5.00\"", "\"item\":\"duo-2/it-1\"", "donor.states[0].item", "duo-2/it-1")]
    [InlineData("\"position\":\"coolant-pump\"", "\"position\":\"coolant-pumps\"", "donor.states[0].position", "coolant-pumps", "did you mean coolant-pump?")]
    [InlineData("\"currency\":\"EUR\"", "\"currency\":\"EURO\"", "currency", "EURO")]
    [InlineData("\"speed\":\"5500/min\"", "\"boost\":\"1.1 bar\"", "goal.speed", "nothing")]
    [InlineData("\"speed\":\"5500/min\"", "\"speed\":\"5500/min\",\"boost\":\"-1 bar\"", "goal.boost", "-1 bar")]
    [InlineData("\"speed\":\"5500/min\"", "\"speed\":\"5500/min\",\"supply\":\"return-ambiant\"", "goal.supply", "return-ambiant", "did you mean return-ambient?")]
    [InlineData("\"speed\":\"5500/min\"", "\"speed\":\"5500/min\",\"fuel\":\"petrol-e6\"", "goal.fuel", "petrol-e6", "did you mean petrol-e0?")]
    [InlineData("\"speed\":\"5500/min\"", "\"speed\":\"5500/min\",\"duty\":\"120 %\"", "goal.duty", "120 %")]
    [InlineData("\"40 kW\"", "\"0 kW\"", "goal.power", "0 kW")]
    [InlineData("\"group\":\"cooling\"", "\"group\":\"coolng\"", "wishes[1].group", "coolng", "did you mean cooling?")]
    [InlineData("\"group\":\"cooling\"", "\"group\":\"cooling\",\"position\":\"injector\"", "wishes[1].position", "position and group")]
    [InlineData("\"group\":\"cooling\",", "", "wishes[1].position", "neither position nor group")]
    [InlineData("\"like\":[\"b\"]", "\"like\":[\"b\",\"bb\"]", "wishes[1].like[1]", "bb", "did you mean b?")]
    [InlineData("\"refuse\":[\"ardlow:12/34\"]", "\"refuse\":[\"ardlow:12-34\"]", "wishes[1].refuse[0]", "ardlow:12-34", "did you mean ardlow:12/34?")]
    [InlineData("\"refuse\":[\"ardlow:12/34\"]", "\"refuse\":[\"77-1\"]", "wishes[1].refuse[0]", "77-1", "did you mean ardlow:77-1 or brask:77-1?")]
    [InlineData("\"refuse\":[\"ardlow:12/34\"]", "\"parts\":[\"ardlow:I-1\"]", "wishes[1].parts[0]", "ardlow:I-1, a part of kind injector")]
    [InlineData("\"refuse\":[\"ardlow:12/34\"]", "\"refuse\":[\"ardlow:12/34\"],\"parts\":[\"ardlow:12/34\"]", "wishes[1].refuse[0]", "ardlow:12/34")]
    [InlineData("\"part\":\"ardlow:77-1\"", "\"part\":\"ardlow:99-9\"", "inHand[0].part", "ardlow:99-9")]
    [InlineData("\"pieces\":2", "\"pieces\":0", "inHand[0].pieces", "0")]
    [InlineData("\"inHand\"", "\"works\":[{\"work\":\"weld\"}],\"inHand\"", "works[0].work", "weld")]
    [InlineData("\"inHand\"", "\"refusedSellers\":[\"nobody\"],\"inHand\"", "refusedSellers[0]", "nobody")]
    [InlineData("\"currency\":\"GBP\"", "\"currency\":\"EUR\"", "rates[0].currency", "EUR")]
    [InlineData("\"is\":\"1.17\"", "\"is\":\"0\"", "rates[0].is", "0")]
    [InlineData("\"is\":\"1.17\"", "\"is\":\"1,17\"", "rates[0].is", "1,17")]
    [InlineData("\"budget\":\"400.00\"", "\"budget\":\"400.005\"", "budget", "400.005")]
    [InlineData("\"neededBy\":\"2026-12-24\"", "\"neededBy\":\"24.12.2026\"", "neededBy", "24.12.2026")]
    [InlineData("\"neededBy\":\"2026-12-24\"", "\"neededBy\":\"2026-11-30\"", "neededBy", "2026-11-30")]
    [InlineData("\"neededBy\":\"2026-12-24\"", "\"neededBy\":\"2200-01-01\"", "neededBy", "2200-01-01")]
    [InlineData("\"startOn\":\"2026-12-01\"", "\"startOn\":\"1999-12-31\"", "startOn", "1999-12-31")]
    [InlineData(
        "{\"group\":\"cooling\"", "{\"position\":\"pump-bolt\",\"keep\":\"renew\"},{\"group\":\"cooling\"", "wishes[1]",
        "a second wish for pump-bolt that says otherwise")]
    [InlineData("\"budget\":\"400.00\"", "\"offersAtMostDaysOld\":-1", "offersAtMostDaysOld", "-1")]
    [InlineData("\"budget\":\"400.00\"", "\"importPercentWhereNotSaid\":1000.5", "importPercentWhereNotSaid", "1000.5")]
    [InlineData("\"budget\":\"400.00\"", "\"colour\":\"red\"", "colour", "colour")]
    public async Task Fault_names_its_field(string was, string becomes, string field, string found, string? mend = null)
    {
        using var client = server.CreateClient();
        using var answer = await client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.With(was, becomes));

        var error = (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-build")).OnlyError();
        Assert.Equal((field, found), (error.Text("field"), error.Text("found")));
        Assert.NotEmpty(error.Text("expected"));
        Assert.Equal(mend ?? (error.Has("mend") ? error.Text("mend") : null), error.Has("mend") ? error.Text("mend") : null);
        await client.RefuseAsync("/api/builds/cart", HttpStatusCode.NotFound, "not-found");
    }

    [Theory]
    [InlineData("40 hp", "quantity-needs-unit", "Which horsepower?")]
    [InlineData("40", "quantity-needs-unit", null)]
    [InlineData("40,5 kW", "quantity-decimal-comma", null)]
    [InlineData("40 bar", "quantity-wrong-unit", null)]
    public async Task Quantity_that_can_mean_several_things_is_asked_back(string power, string type, string? title)
    {
        using var client = server.CreateClient();
        using var answer = await client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.With("\"40 kW\"", $"\"{power}\""));

        var problem = await answer.ProblemAsync(HttpStatusCode.BadRequest, type);
        Assert.Equal(("goal.power", power), (problem.OnlyError().Text("field"), problem.OnlyError().Text("found")));
        Assert.Equal(title ?? problem.Text("title"), problem.Text("title"));
    }

    [Theory]
    [InlineData("{\"code\":")]
    [InlineData("")]
    public async Task Body_that_is_no_json_is_told(string body)
    {
        using var client = server.CreateClient();
        using var answer = await client.SendAsync(HttpMethod.Post, "/api/builds", body);

        Assert.Equal("body", (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-request")).OnlyError().Text("field"));
    }
}

using System.Net;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging.Abstractions;
using PartMatch.Storage;
using PartMatch.Web.Http;

namespace PartMatch.Web.Tests.Http;

public sealed class ProblemsTests
{
    [Theory]
    [InlineData(DatabaseFault.Busy, HttpStatusCode.ServiceUnavailable, "/problems/base-busy")]
    [InlineData(DatabaseFault.Full, HttpStatusCode.InsufficientStorage, "/problems/disk-full")]
    [InlineData(DatabaseFault.Corrupt, HttpStatusCode.InternalServerError, "/problems/fault")]
    public async Task Trouble_of_the_base_has_a_name_where_asking_again_may_help(DatabaseFault trouble, HttpStatusCode status, string type)
    {
        var context = new DefaultHttpContext();
        using var body = new MemoryStream();
        context.Response.Body = body;

        await new Problems(_ => throw new DatabaseException("told to the log only") { Fault = trouble }, NullLogger<Problems>.Instance).InvokeAsync(context);

        Assert.Equal((int)status, context.Response.StatusCode);
        var problem = JsonNode.Parse(body.ToArray())!;
        Assert.Equal(type, problem["type"]!.GetValue<string>());
        Assert.DoesNotContain("told to the log only", problem.ToJsonString(), StringComparison.Ordinal);
    }
}

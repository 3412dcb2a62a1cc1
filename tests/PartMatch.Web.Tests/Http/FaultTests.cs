using System.Net;
using PartMatch.Storage;

namespace PartMatch.Web.Tests.Http;

public sealed class FaultTests
{
    [Fact]
    public async Task A_damaged_database_is_a_500_that_says_nothing_of_the_machine_and_never_an_empty_answer()
    {
        await using var server = new PartMatchServer { Settings = { ["Logging:LogLevel:Default"] = "None" } };
        using var client = server.CreateClient();
        using (var added = await client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop)))
        {
            Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        }

        // Everything behind the first page is overwritten: the schema can still be read, the rows cannot.
        server.Services.GetService(typeof(Database));
        await using (var file = File.OpenWrite(server.DatabasePath))
        {
            Assert.True(file.Length > 8192, "the books have reached the file");
            file.Position = 4096;
            file.Write(Enumerable.Repeat((byte)0xA5, (int)file.Length - 4096).ToArray());
        }

        File.Delete(server.DatabasePath + "-wal");
        using var answer = await client.GetAsync(new Uri("/api/books", UriKind.Relative), TestContext.Current.CancellationToken);

        var problem = await answer.ProblemAsync(HttpStatusCode.InternalServerError, "fault");
        Assert.DoesNotContain(server.DatabasePath, problem.GetRawText(), StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", problem.GetRawText(), StringComparison.Ordinal);
    }
}

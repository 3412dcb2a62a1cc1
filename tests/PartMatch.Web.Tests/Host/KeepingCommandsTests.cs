namespace PartMatch.Web.Tests.Host;

/// <summary>Backup, restore and check as a user types them.</summary>
public sealed class KeepingCommandsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("partmatch-keep-").FullName;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private string Base => Path.Combine(_folder, "base.db");

    private string Backup => Path.Combine(_folder, "backup.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_running_base_is_backed_up_and_checked_and_comes_back_once_the_server_is_stopped()
    {
        Storage.Database.Open(Base).Dispose();
        byte[] old;
        await using (var server = ServerProcess.Start(Environment(), ["--urls", "http://127.0.0.1:0"]))
        {
            using var client = new HttpClient { BaseAddress = await server.AddressAsync() };
            (await client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop))).Dispose();
            old = await ExportAsync(client);

            Assert.StartsWith($"PartMatch wrote the backup '{Backup}': ", await DoAsync(0, "backup", Backup), StringComparison.Ordinal);
            Assert.StartsWith($"PartMatch checked '{Base}': sound.", await DoAsync(0, "check"), StringComparison.Ordinal);

            var changed = SmallBooks.Shop.With("kinds.csv", SmallBooks.Shop["kinds.csv"].Replace("Coolant pump", "Water pump", StringComparison.Ordinal));
            (await client.PostBookAsync(SmallBooks.Zip(changed), "?mode=replace")).Dispose();
            Assert.NotEqual(old, await ExportAsync(client));
            Assert.Contains("Stop the server, then restore.", await DoAsync(1, "restore", Backup), StringComparison.Ordinal);

            await server.TerminateAsync();
            Assert.Equal(0, await server.ExitCodeAsync());
        }

        var restored = await DoAsync(0, "restore", Backup);
        Assert.Contains("The base as it was before is kept as '", restored, StringComparison.Ordinal);
        Assert.True(File.Exists(restored.Split('\'')[^2]), restored);

        await using var next = ServerProcess.Start(Environment(), ["--urls", "http://127.0.0.1:0"]);
        using var asking = new HttpClient { BaseAddress = await next.AddressAsync() };
        Assert.Equal(old, await ExportAsync(asking));
    }

    [Fact]
    public async Task What_cannot_be_done_is_said_in_one_sentence_with_exit_code_1()
    {
        Assert.StartsWith($"PartMatch did not back up: There is no base '{Base}'", await DoAsync(1, "backup", Backup), StringComparison.Ordinal);
        Assert.StartsWith($"PartMatch did not restore: There is no file '{Backup}'", await DoAsync(1, "restore", Backup), StringComparison.Ordinal);
        Assert.StartsWith($"PartMatch did not check: There is no base '{Base}'", await DoAsync(1, "check"), StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder));
    }

    [Theory]
    [InlineData("bakcup old.db")]
    [InlineData("backup")]
    [InlineData("restore --urls http://127.0.0.1:0")]
    [InlineData("check old.db")]
    [InlineData("serve")]
    public async Task A_command_that_is_none_starts_nothing_and_says_which_there_are(string words)
    {
        var sentence = await DoAsync(2, words.Split(' '));

        Assert.Contains("expected 'backup FILE', 'restore FILE' or 'check'", sentence, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder));
    }

    [Fact]
    public async Task Settings_may_stand_behind_the_command()
    {
        var other = Path.Combine(_folder, "other.db");
        Storage.Database.Open(other).Dispose();

        Assert.StartsWith($"PartMatch checked '{other}': sound.", await DoAsync(0, "check", "--PartMatch:Database", other), StringComparison.Ordinal);
    }

    /// <summary>What the command said: on the output when it was done, else on the errors.</summary>
    private async Task<string> DoAsync(int exitCode, params string[] words)
    {
        await using var command = ServerProcess.Start(Environment(), words);
        var found = await command.ExitCodeAsync();
        Assert.True(found == exitCode, $"exit code {found}: {string.Join('\n', command.Output.Concat(command.Errors))}");
        Assert.Empty(exitCode == 0 ? command.Errors : command.Output);
        return Assert.Single(exitCode == 0 ? command.Output : command.Errors);
    }

    private static Task<byte[]> ExportAsync(HttpClient client) => client.GetByteArrayAsync(new Uri("/api/books/shop", UriKind.Relative), Cancellation);

    private Dictionary<string, string> Environment() => new() { ["HOME"] = _folder, ["PartMatch__Database"] = Base };
}

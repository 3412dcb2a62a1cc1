using System.Globalization;
using PartMatch.Storage.Keeping;

namespace PartMatch.Web.Host;

/// <summary>The commands that keep the base: <c>backup</c>, <c>restore</c> and <c>check</c> as the first word behind the program.</summary>
internal static class KeepingCommands
{
    private const int Done = 0;
    private const int NotDone = 1;
    private const int NotUnderstood = 2;

    private const string Usage = "expected 'backup FILE', 'restore FILE' or 'check', and the settings behind them; nothing of this starts the server.";

    /// <returns>The exit code: 0 done, 1 refused or faults found, 2 the command was not understood; null when it is the server that is wanted.</returns>
    public static int? Run(string[] args, IConfiguration configuration)
    {
        if (args is not [var command, .. var rest] || command.StartsWith('-') || command.StartsWith('/') || command.Contains('=', StringComparison.Ordinal))
        {
            return null;
        }

        string[] files = [.. rest.TakeWhile(word => !word.StartsWith('-'))];
        Func<string, KeepingOutcome>? act = (command, files) switch
        {
            ("backup", [var file]) => database => BaseBackup.Write(database, file),
            ("restore", [var file]) => database => BaseRestore.Run(database, file, TimeProvider.System),
            ("check", []) => database => BaseCheck.Run(database, CancellationToken.None),
            _ => null,
        };
        if (act is null)
        {
            return Say(NotUnderstood, $"PartMatch found '{string.Join(' ', files.Prepend(command))}', {Usage}");
        }

        var (path, refusal) = DatabasePath.Read(configuration);
        return path is null ? Say(NotDone, $"PartMatch did not {Verb(command)}: {refusal}") : Tell(command, act(path));
    }

    private static int Tell(string command, KeepingOutcome outcome) => outcome switch
    {
        BackedUp done => Say(Done, $"PartMatch wrote the backup '{done.File}': {done.Bytes} bytes, schema {done.Schema}, found whole."),
        Restored { Kept: null } done => Say(Done, $"PartMatch restored '{done.Base}': {done.Bytes} bytes, schema {done.Schema}."),
        Restored done => Say(
            Done, $"PartMatch restored '{done.Base}': {done.Bytes} bytes, schema {done.Schema}. The base as it was before is kept as '{done.Kept}'."),
        Sound { AreRowsChecked: true } sound => Say(
            Done, $"PartMatch checked '{sound.Base}': sound. {sound.Bytes} bytes, schema {sound.Schema}, {sound.Books} books."),
        Sound sound => Say(
            Done, $"PartMatch checked '{sound.Base}': the file is sound, its schema {sound.Schema} older. Its rows can be checked once a server has opened it."),
        Faulty faulty => Say(
            NotDone, $"PartMatch checked '{faulty.Base}': {faulty.Faults.Count} faults. Stop the server and restore a backup.\n{string.Join('\n', faulty.Faults)}"),
        KeepingRefused refused => Say(NotDone, $"PartMatch did not {Verb(command)}: {refused.Sentence}"),
        var other => throw new InvalidOperationException($"A command ended as {other.GetType().Name}, which no sentence names."),
    };

    private static string Verb(string command) => command == "backup" ? "back up" : command;

    private static int Say(int exitCode, FormattableString sentence)
    {
        (exitCode == Done ? Console.Out : Console.Error).WriteLine(sentence.ToString(CultureInfo.InvariantCulture));
        return exitCode;
    }
}

using System.Globalization;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.Builds;

/// <summary>The builds, each with every version that it ever had.</summary>
public sealed class BuildStore(Database database, TimeProvider time)
{
    private const string Latest = "version = (select max(v.version) from build_versions v where v.build = b.build)";

    private const string Columns = "b.build, b.version, b.act, b.at, b.who, b.why, b.restores, b.document";

    /// <summary>The present version of every build, deleted ones included, in ordinal order of their codes.</summary>
    public IReadOnlyList<BuildVersion> List()
    {
        using var connection = database.Connect();
        return [.. connection.Query<Row>($"select {Columns} from build_versions b where {Latest} order by b.build").Select(ToVersion)];
    }

    /// <summary>The present version, or the one asked for; null where there is none. A deleted build has one too, without a document.</summary>
    public BuildVersion? Find(string build, int? version = null)
    {
        using var connection = database.Connect();
        return Find(connection, build, version);
    }

    /// <summary>Every version of a build, newest first; empty where no build ever had the code.</summary>
    public IReadOnlyList<BuildVersion> Versions(string build)
    {
        using var connection = database.Connect();
        return
        [
            .. connection.Query<Row>($"select {Columns} from build_versions b where b.build = @build order by b.version desc", new { build }).Select(ToVersion),
        ];
    }

    /// <summary>Stores a build whose code no present one has; the versions of a deleted one stay below it.</summary>
    public BuildOutcome Create(Build build, ChangeNote note) => Write(build.Code, present => present?.Document is null
        ? Next(build.Code, present, BuildAct.Create, build, note)
        : new BuildOutcome.Taken(present));

    /// <param name="seen">The version that was seen; null to store it whatever is there by now.</param>
    public BuildOutcome Save(Build build, int? seen, ChangeNote note) => Write(build.Code, present => present switch
    {
        null => new BuildOutcome.Absent(),
        _ when IsOther(present, seen) => new BuildOutcome.Stale(present),
        { Document: null } => new BuildOutcome.Stale(present),
        _ when BuildDocument.Write(present.Document) == BuildDocument.Write(build) => new BuildOutcome.Same(present),
        _ => Next(build.Code, present, BuildAct.Edit, build, note),
    });

    public BuildOutcome Delete(string build, int? seen, ChangeNote note) => Write(build, present => present switch
    {
        null => new BuildOutcome.Absent(),
        _ when IsOther(present, seen) => new BuildOutcome.Stale(present),
        { Document: null } => new BuildOutcome.Same(present),
        _ => Next(build, present, BuildAct.Delete, null, note),
    });

    /// <summary>Brings an earlier version back, as a version of its own; also of a build that was deleted.</summary>
    public BuildOutcome Restore(string build, int version, int? seen, ChangeNote note)
    {
        using var connection = database.Connect();
        return Find(connection, build, version) is not { Document: { } document } ? new BuildOutcome.Absent() : Write(build, present => present switch
        {
            null => new BuildOutcome.Absent(),
            _ when IsOther(present, seen) => new BuildOutcome.Stale(present),
            { Document: { } same } when BuildDocument.Write(same) == BuildDocument.Write(document) => new BuildOutcome.Same(present),
            _ => Next(build, present, BuildAct.Restore, document, note, version),
        });
    }

    private static bool IsOther(BuildVersion present, int? seen) => seen is { } version && version != present.Saved.Version;

    private BuildOutcome.Done Next(string build, BuildVersion? present, BuildAct act, Build? document, ChangeNote note, int? restores = null)
    {
        var at = time.GetUtcNow().ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
        return new(new BuildVersion(new BuildSaved(build, (present?.Saved.Version ?? 0) + 1, act, at, note.Who, note.Why, restores), document));
    }

    /// <summary>Decides and writes under one lock: what was found there still holds when it is written.</summary>
    private BuildOutcome Write(string build, Func<BuildVersion?, BuildOutcome> decide)
    {
        try
        {
            using var connection = database.Connect();
            using var transaction = connection.BeginTransaction(deferred: false);
            var outcome = decide(Find(connection, build, null));
            if (outcome is BuildOutcome.Done { Now: var now })
            {
                Insert(connection, now);
                transaction.Commit();
            }

            return outcome;
        }
        catch (SqliteException exception)
        {
            throw DatabaseException.Explain(exception, database.Path);
        }
    }

    private static void Insert(SqliteConnection connection, BuildVersion now) => connection.Execute(
        """
        insert into build_versions (build, version, act, at, who, why, restores, document)
        values (@Build, @Version, @act, @At, @Who, @Why, @Restores, @document)
        """,
        new
        {
            now.Saved.Build,
            now.Saved.Version,
            act = Codes.Of(now.Saved.Act),
            now.Saved.At,
            now.Saved.Who,
            now.Saved.Why,
            now.Saved.Restores,
            document = now.Document is null ? null : BuildDocument.Write(now.Document),
        });

    private static BuildVersion? Find(SqliteConnection connection, string build, int? version) =>
        connection.QuerySingleOrDefault<Row>(
            $"select {Columns} from build_versions b where b.build = @build and (b.version = @version or (@version is null and b.{Latest}))",
            new { build, version }) is { } row ? ToVersion(row) : null;

    private static BuildVersion ToVersion(Row row) => new(
        new BuildSaved(row.Build, row.Version, Codes.Get<BuildAct>(row.Act), row.At, row.Who, row.Why, row.Restores),
        row.Document is null ? null : BuildDocument.Read(Encoding.UTF8.GetBytes(row.Document)) is BuildReading.Read read ? read.Build
            : throw new DatabaseException(
                $"Version {row.Version} of the build {row.Build} cannot be read: it was changed outside this program. Restore a backup."));

    private sealed record Row
    {
        public required string Build { get; init; }

        public int Version { get; init; }

        public required string Act { get; init; }

        public required string At { get; init; }

        public string? Who { get; init; }

        public string? Why { get; init; }

        public int? Restores { get; init; }

        public string? Document { get; init; }
    }
}

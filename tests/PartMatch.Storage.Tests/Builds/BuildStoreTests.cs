using PartMatch.Storage.Builds;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Keeping;
using Xunit;

namespace PartMatch.Storage.Tests.Builds;

public sealed class BuildStoreTests : IDisposable
{
    private const string Noon = "2026-11-02T12:00:00Z";

    private static readonly ChangeNote _ada = new("Ada", "first try");

    private readonly TempBase _base = new();
    private readonly BuildStore _builds;

    public BuildStoreTests() => _builds = new BuildStore(_base.Database, new StoppedClock(Noon));

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Stored_build_is_found_with_who_made_it_and_when()
    {
        Assert.Null(_builds.Find("spare"));

        var done = Assert.IsType<BuildOutcome.Done>(_builds.Create(AnyBuild.Of(), _ada));

        var found = _builds.Find("spare")!; // just stored
        Assert.Equal((1, BuildAct.Create, "Ada", "first try"), (found.Saved.Version, found.Saved.Act, found.Saved.Who, found.Saved.Why));
        Assert.Equal(done.Now.Saved, found.Saved);
        Assert.Equal(BuildDocument.Write(AnyBuild.Of()), BuildDocument.Write(found.Document!)); // stored with one
        Assert.Equal(["spare"], _builds.List().Select(build => build.Saved.Build));
    }

    [Fact]
    public void Code_of_a_build_that_is_there_is_taken()
    {
        _builds.Create(AnyBuild.Of(), _ada);

        var taken = Assert.IsType<BuildOutcome.Taken>(_builds.Create(AnyBuild.Of(title: "Another"), _ada));

        Assert.Equal("A spare", taken.Present.Document?.Title);
        Assert.Equal(1, _builds.Find("spare")?.Saved.Version);
    }

    [Fact]
    public void Change_makes_a_version_and_keeps_the_one_before()
    {
        _builds.Create(AnyBuild.Of(), _ada);

        Assert.IsType<BuildOutcome.Done>(_builds.Save(AnyBuild.Of(title: "Changed"), 1, new ChangeNote("Bo")));

        Assert.Equal("Changed", _builds.Find("spare")?.Document?.Title);
        Assert.Equal("A spare", _builds.Find("spare", 1)?.Document?.Title);
        Assert.Equal([2, 1], _builds.Versions("spare").Select(version => version.Saved.Version));
        Assert.Null(_builds.Find("spare", 3));
    }

    [Fact]
    public void Change_of_another_version_than_the_present_one_stores_nothing()
    {
        _builds.Create(AnyBuild.Of(), _ada);
        _builds.Save(AnyBuild.Of(title: "Changed"), 1, _ada);

        var stale = Assert.IsType<BuildOutcome.Stale>(_builds.Save(AnyBuild.Of(title: "Late"), 1, _ada));

        Assert.Equal("Changed", stale.Present.Document?.Title);
        Assert.IsType<BuildOutcome.Stale>(_builds.Delete("spare", 1, _ada));
        Assert.IsType<BuildOutcome.Stale>(_builds.Restore("spare", 1, 1, _ada));
        Assert.Equal(2, _builds.Find("spare")?.Saved.Version);
        Assert.IsType<BuildOutcome.Done>(_builds.Save(AnyBuild.Of(title: "Whatever is there"), null, _ada));
    }

    [Fact]
    public void Change_that_changes_nothing_makes_no_version()
    {
        _builds.Create(AnyBuild.Of(), _ada);

        Assert.Equal(1, Assert.IsType<BuildOutcome.Same>(_builds.Save(AnyBuild.Of(), 1, _ada)).Now.Saved.Version);
        Assert.Equal(1, Assert.IsType<BuildOutcome.Same>(_builds.Restore("spare", 1, 1, _ada)).Now.Saved.Version);
    }

    [Fact]
    public void Deleted_build_keeps_its_versions_and_can_be_taken_back()
    {
        _builds.Create(AnyBuild.Of(), _ada);

        Assert.Equal(2, Assert.IsType<BuildOutcome.Done>(_builds.Delete("spare", 1, _ada)).Now.Saved.Version);
        Assert.Null(_builds.Find("spare")?.Document);
        Assert.Equal("A spare", _builds.Find("spare", 1)?.Document?.Title);
        Assert.IsType<BuildOutcome.Stale>(_builds.Save(AnyBuild.Of(), 2, _ada));
        Assert.IsType<BuildOutcome.Same>(_builds.Delete("spare", 2, _ada));
        Assert.IsType<BuildOutcome.Absent>(_builds.Restore("spare", 2, 2, _ada)); // that version has no document

        var back = Assert.IsType<BuildOutcome.Done>(_builds.Restore("spare", 1, 2, new ChangeNote("Bo")));
        Assert.Equal((3, BuildAct.Restore, 1), (back.Now.Saved.Version, back.Now.Saved.Act, back.Now.Saved.Restores));
        Assert.Equal("A spare", _builds.Find("spare")?.Document?.Title);
    }

    [Fact]
    public void Code_of_a_deleted_build_can_be_used_again_above_its_versions()
    {
        _builds.Create(AnyBuild.Of(), _ada);
        _builds.Delete("spare", null, _ada);

        var again = Assert.IsType<BuildOutcome.Done>(_builds.Create(AnyBuild.Of(title: "Second life"), _ada));

        Assert.Equal(3, again.Now.Saved.Version);
        Assert.Equal("A spare", _builds.Find("spare", 1)?.Document?.Title);
    }

    [Fact]
    public void Build_that_never_was_is_absent()
    {
        Assert.IsType<BuildOutcome.Absent>(_builds.Save(AnyBuild.Of(), null, _ada));
        Assert.IsType<BuildOutcome.Absent>(_builds.Delete("spare", null, _ada));
        Assert.IsType<BuildOutcome.Absent>(_builds.Restore("spare", 1, null, _ada));
        Assert.Empty(_builds.Versions("spare"));
    }

    [Fact]
    public void Backup_carries_every_version_and_the_check_reads_them()
    {
        _builds.Create(AnyBuild.Of(), _ada);
        _builds.Save(AnyBuild.Of(title: "Changed"), 1, _ada);
        _builds.Delete("spare", 2, _ada);
        var backup = _base.Path + ".backup";

        Assert.IsType<BackedUp>(BaseBackup.Write(_base.Path, backup));

        using (var copy = Database.Open(backup))
        {
            var versions = new BuildStore(copy, new StoppedClock(Noon)).Versions("spare");
            Assert.Equal([null, "Changed", "A spare"], versions.Select(version => version.Document?.Title));
        }

        Assert.IsType<Sound>(BaseCheck.Run(backup, TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Check_names_a_version_that_is_no_document()
    {
        _builds.Create(AnyBuild.Of(), _ada);
        Keeping.KeptBase.Execute(_base.Path, "update build_versions set document = '{\"code\": 5}'");

        var faulty = Assert.IsType<Faulty>(BaseCheck.Run(_base.Path, TestContext.Current.CancellationToken));

        Assert.Equal("version 1 of the build spare is no document of a build", Assert.Single(faulty.Faults));
    }
}

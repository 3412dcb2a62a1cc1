using PartMatch.Core.Photos;
using PartMatch.Storage.Keeping;
using PartMatch.Storage.Photos;
using Xunit;

namespace PartMatch.Storage.Tests.Keeping;

public sealed class BaseCheckTests : IDisposable
{
    private readonly KeptBase _kept = new();

    public void Dispose() => _kept.Dispose();

    [Fact]
    public void Sound_base_is_said_to_be_so_also_while_it_is_open()
    {
        _kept.Fill();
        using var database = Database.Open(_kept.Base);
        new ImageStore(database, TimeProvider.System).Store(new Photo(PhotoFormat.Png, 1, 1, new byte[] { 1 }));

        var sound = KeptBase.Done<Sound>(Check());

        Assert.Equal((_kept.Base, 2, true), (sound.Base, sound.Books, sound.AreRowsChecked));
        Assert.Equal(Migration.Embedded()[^1].Number, sound.Schema);
    }

    [Fact]
    public void Spoiled_pages_are_faults()
    {
        _kept.Fill();
        KeptBase.SpoilTable(_kept.Base, "makers");

        Assert.InRange(KeptBase.Done<Faulty>(Check()).Faults.Count, 1, BaseCheck.MaxFaults);
    }

    [Fact]
    public void Reference_to_nothing_is_a_fault()
    {
        _kept.Fill();
        KeptBase.Execute(_kept.Base, "insert into makers (book, maker, name) values ('nowhere', 'orrin', 'Orrin')");

        Assert.Equal("a row of makers refers to a row of books that is not there", Assert.Single(KeptBase.Done<Faulty>(Check()).Faults));
    }

    [Fact]
    public void Row_that_no_import_would_take_is_a_fault()
    {
        _kept.Fill();
        KeptBase.Execute(_kept.Base, """update "values" set value = 'wide' where feature = 'outer'""");

        var fault = Assert.Single(KeptBase.Done<Faulty>(Check()).Faults);
        Assert.StartsWith("book lark-2, values.csv line", fault, StringComparison.Ordinal);
        Assert.Contains("found 'wide'", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Picture_that_is_not_what_its_name_says_is_a_fault()
    {
        _kept.Fill();
        string image;
        using (var database = Database.Open(_kept.Base))
        {
            image = new ImageStore(database, TimeProvider.System).Store(new Photo(PhotoFormat.Png, 1, 1, new byte[] { 1 }));
        }

        KeptBase.Execute(_kept.Base, $"update images set bytes = x'02' where image = '{image}'");

        Assert.Contains(image, Assert.Single(KeptBase.Done<Faulty>(Check()).Faults), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_base_is_refused()
    {
        KeptBase.Refused(KeepingRefusal.NoFile, Check());
        KeptBase.Execute(_kept.Base, "create table notes (note text)");
        KeptBase.Refused(KeepingRefusal.NotOurs, Check());
        File.Delete(_kept.Base);
        _kept.Fill();
        KeptBase.Execute(_kept.Base, "pragma user_version = 999");
        KeptBase.Refused(KeepingRefusal.NewerSchema, Check());
    }

    [Fact]
    public void Base_of_an_older_schema_is_checked_as_a_file_and_stays_as_it_is()
    {
        _kept.Fill();
        KeptBase.Execute(_kept.Base, "pragma user_version = 3");

        Assert.False(KeptBase.Done<Sound>(Check()).AreRowsChecked);
        Assert.Equal(3, KeptBase.Read<long>(_kept.Base, "pragma user_version"));
    }

    private KeepingOutcome Check() => BaseCheck.Run(_kept.Base, TestContext.Current.CancellationToken);
}

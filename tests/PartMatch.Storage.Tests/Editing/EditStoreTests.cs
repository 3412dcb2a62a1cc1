using Dapper;
using PartMatch.Storage.Editing;
using Xunit;

namespace PartMatch.Storage.Tests.Editing;

public sealed class EditStoreTests : IDisposable
{
    private readonly EditBase _base = new();

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Added_row_is_there_at_once_and_keeps_what_was_typed()
    {
        var done = _base.Done(EditBase.Add("values", "part=marl:B-1/3", "feature=bore", "value=25.60", "minus=0.010", "unit=mm", "evidence=ev-0002"));

        Assert.Equal(["marl:B-1/3,bore,ev-0002"], done.Rows.Select(row => row.Key));
        Assert.Equal("25.60", _base.Row("values", "marl:B-1/3,bore,ev-0002")?["value"]);
        Assert.Contains("marl:B-1/3,bore,25.60,0.010,,mm,,ev-0002\n", _base.Everything(), StringComparison.Ordinal);
    }

    // A row that would be written again would be taken out first: then this guard speaks.
    [Fact]
    public void New_part_or_one_that_keeps_its_kind_leaves_every_other_row_alone()
    {
        using (var connection = _base.Base.Database.Connect())
        {
            connection.Execute("create trigger untouched before delete on \"values\" begin select raise(abort, 'a value was taken out'); end");
        }

        _base.Done(EditBase.Add("parts", "part=marl:B-901", "kind=bush", "name=Bush, late", "evidence=ev-0002"));
        _base.Done(_base.Change("parts", "marl:B-1/3", "name=Other bush"));

        Assert.Equal("Other bush", _base.Row("parts", "marl:B-1/3")?["name"]);
        using var after = _base.Base.Database.Connect();
        Assert.Empty(after.Query("pragma foreign_key_check"));
    }

    [Fact]
    public void Value_without_a_unit_beside_a_spread_with_one_is_asked_about()
    {
        var outcome = _base.Apply(EditBase.Add("values", "part=marl:B-1/3", "feature=bore", "value=1.02", "minus=0.2 mm", "evidence=ev-0002"));

        var fault = Assert.Single(Assert.IsType<EditOutcome.Faulty>(outcome).Faults);
        Assert.Equal(("value", "write 1.02 mm, if it is that"), (fault.Column, fault.Suggestion));
    }

    [Theory]
    [InlineData("1.012 in", "1.012", "in")]
    [InlineData("25.60mm", "25.60", "mm")]
    [InlineData("-0.5 mm", "-0.5", "mm")]
    public void Quantity_typed_with_its_unit_is_split_as_typed(string typed, string value, string unit)
    {
        _base.Done(EditBase.Add("values", "part=marl:B-1/3", "feature=bore", $"value={typed}", "evidence=ev-0002"));

        var row = _base.Row("values", "marl:B-1/3,bore,ev-0002");
        Assert.Equal((value, unit), (row?["value"], row?["unit"]));
    }

    [Theory]
    [InlineData("25,6 mm", "", "write 25.6 mm")] // a comma is asked about
    [InlineData("1.012 in", "mm", "1.012 in is 25.7048 mm")] // 1.012 × 25.4 = 25.7048
    [InlineData("12 kW", "", "44.60 mm")] // a bore is a length
    public void Quantity_that_can_mean_two_things_is_asked_about(string typed, string unit, string mend)
    {
        var outcome = _base.Apply(EditBase.Add("values", "part=marl:B-1/3", "feature=bore", $"value={typed}", $"unit={unit}", "evidence=ev-0002"));

        var fault = Assert.Single(Assert.IsType<EditOutcome.Faulty>(outcome).Faults);
        Assert.Equal((0, "value"), (fault.Row, fault.Column));
        Assert.Contains(mend, fault.Suggestion ?? fault.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("B-1/3", "marl:B-1/3")] // there is one
    [InlineData("b13", "marl:B-1/3")] // the same number key
    [InlineData("B-77", "orrin:B-77")] // of the book that this one uses
    [InlineData("S-10O", "marl:S-100")] // the letter O for the digit 0
    [InlineData("LP-88", "write its maker in front, such as marl:LP-88, and record that part first where no book has it")]
    [InlineData("marl:B-77", "orrin:B-77")] // another maker's number
    public void Part_without_its_maker_or_with_a_wrong_one_is_asked_about(string typed, string mend)
    {
        var outcome = _base.Apply(EditBase.Add("values", $"part={typed}", "feature=bore", "value=25.60 mm", "evidence=ev-0002"));

        var fault = Assert.Single(Assert.IsType<EditOutcome.Faulty>(outcome).Faults);
        Assert.Equal(("part", mend), (fault.Column, fault.Suggestion));
    }

    [Fact]
    public void Choice_that_begins_with_a_digit_is_no_quantity()
    {
        _base.Done(new RowChange("features", null, null, EditBase.Cells("kind=tap", "feature=head", "name=head", "type=choice", "choices=12-point|6-point")),
            EditBase.Add("kinds", "kind=tap", "name=Tap", "running=cannot-alter", "reviewed=no"),
            EditBase.Add("parts", "part=marl:T-1", "kind=tap", "name=Tap"),
            EditBase.Add("values", "part=marl:T-1", "feature=head", "value=12-point"));

        Assert.Equal("12-point", _base.Row("values", "marl:T-1,head,")?["value"]);
    }

    [Fact]
    public void Every_fault_of_a_row_is_told_with_its_column()
    {
        var before = _base.Everything();
        var outcome = _base.Apply(EditBase.Add("values", "part=marl:B-1/9", "feature=bore", "value=", "unit=mn", "evidence=ev-0099", "colour=red"));
        Assert.Equal(["colour"], Assert.IsType<EditOutcome.Faulty>(outcome).Faults.Select(fault => fault.Column));

        outcome = _base.Apply(EditBase.Add("values", "part=marl:B-1/9", "feature=bore", "unit=mn", "evidence=ev-0099"));
        var faults = Assert.IsType<EditOutcome.Faulty>(outcome).Faults;
        Assert.Equal(["evidence", "part", "unit", "value"], faults.Select(fault => fault.Column).Order(StringComparer.Ordinal));
        Assert.Equal("marl:B-1/2", faults.Single(fault => fault.Column == "part").Suggestion);
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Row_that_somebody_changed_meanwhile_is_not_overwritten()
    {
        var mine = _base.Change("values", "marl:I-1,length,ev-0002", "value=2.05");
        _base.Done(_base.Change("values", "marl:I-1,length,ev-0002", "value=2.06"));

        var stale = Assert.IsType<EditOutcome.Stale>(_base.Apply(mine));
        Assert.Equal("2.06", stale.Present?.Row["value"]);
        Assert.Equal("Ada", stale.Changed?.Who);
        Assert.Equal("2.06", _base.Row("values", "marl:I-1,length,ev-0002")?["value"]);
    }

    [Fact]
    public void Row_that_somebody_removed_meanwhile_is_told_to_be_gone()
    {
        var mine = _base.Change("values", "marl:I-1,length,ev-0002", "value=2.05");
        _base.Done(EditBase.Remove("values", "marl:I-1,length,ev-0002"));

        var stale = Assert.IsType<EditOutcome.Stale>(_base.Apply(mine));
        Assert.Null(stale.Present);
        Assert.NotNull(stale.Changed);
    }

    [Fact]
    public void Row_in_use_is_not_removed_and_its_users_are_named()
    {
        var before = _base.Everything();
        var inUse = Assert.IsType<EditOutcome.InUse>(_base.Apply(EditBase.Remove("parts", "marl:S-100")));

        string[] files = [.. inUse.Users.Select(user => user.File).Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(["contents.csv", "findings.csv", "fitments.csv", "items.csv", "limits.csv", "offers.csv", "pairs.csv", "supersessions.csv",
            "values.csv"], files);
        Assert.Contains(inUse.Users, user => user is { File: "fitments.csv", Key: "lb,main-shaft,marl:S-100,2016-05,2017-06-01,," });
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Row_used_by_another_book_is_not_removed_and_that_book_is_named()
    {
        var inUse = Assert.IsType<EditOutcome.InUse>(_base.ApplyTo("shared", EditBase.Remove("works", "ream-bush")));

        // Within its own book the rule names it; the family's joint and a work done name it too.
        Assert.Contains(inUse.Users, user => user is { Book: "shared", File: "rules.csv" });
        Assert.IsType<EditOutcome.InUse>(_base.ApplyTo("shared", EditBase.Remove("features", "shaft,outer")));
    }

    [Fact]
    public void Changes_of_several_rows_are_made_together_or_not_at_all()
    {
        var before = _base.Everything();
        RowChange[] sound =
        [
            EditBase.Add("evidence", "evidence=ev-0010", "grade=trial-fitted", "date=2026-11-02", "author=Ada"),
            EditBase.Add("findings", "finding=fi-0010", "part=marl:S-100", "variant=la", "position=main-shaft", "axis=mounts", "outcome=yes", "evidence=ev-0010"),
        ];
        var faulty = EditBase.Add("findings", "finding=fi-0011", "part=marl:S-100", "variant=la", "position=main-shaft", "axis=mounts", "outcome=same", "evidence=ev-0010");

        var outcome = Assert.IsType<EditOutcome.Faulty>(_base.Apply([.. sound, faulty]));
        Assert.Equal((2, "outcome"), (outcome.Faults[0].Row, outcome.Faults[0].Column));
        Assert.Equal(before, _base.Everything());

        Assert.Equal(2, _base.Done(sound).Rows.Count);
        Assert.Single(_base.History.List(new("lark-2", "findings", "fi-0010", 10, null)).Changes);
    }

    [Fact]
    public void Point_of_a_curve_is_typed_with_its_units_and_kept_as_typed()
    {
        var done = _base.Done(EditBase.Add("curves", "part=marl:I-1", "curve=dead-time", "x=16.0 V", "y=43.5 psi", "value=0.78 ms", "evidence=ev-0001"));

        Assert.Equal("marl:I-1,dead-time,16.0,43.5,ev-0001", Assert.Single(done.Rows).Key);
        var row = _base.Row("curves", "marl:I-1,dead-time,16.0,43.5,ev-0001");
        Assert.Equal(("16.0", "V", "43.5", "psi", "0.78", "ms"), (row?["x"], row?["xUnit"], row?["y"], row?["yUnit"], row?["value"], row?["unit"]));
    }

    [Fact]
    public void Both_sides_of_a_companion_rule_are_typed_with_their_units()
    {
        _base.Done(EditBase.Add(
            "companions", "companion=thick-needs-wide", "whenPosition=main-shaft", "whenFeature=outer", "whenRelation=at-least", "whenValue=3.40 in",
            "thenPosition=front-bush", "thenFeature=bore", "thenRelation=at-least", "thenValue=86.4mm"));

        var row = _base.Row("companions", "thick-needs-wide");
        Assert.Equal(("3.40", "in", "86.4", "mm"), (row?["whenValue"], row?["whenUnit"], row?["thenValue"], row?["thenUnit"]));
    }

    // The other points of the curve are over V and bar; the bore is a length. Only the cell that was typed is to blame, not its empty unit.
    [Theory]
    [InlineData("curves", "part=marl:I-1;curve=dead-time;x=16,0 V;y=3 bar;value=0.78;unit=ms", "x")] // a decimal comma is asked about
    [InlineData("curves", "part=marl:I-1;curve=dead-time;x=16 bar;y=3 bar;value=0.78;unit=ms", "x")]
    [InlineData("curves", "part=marl:I-1;curve=dead-time;x=16 V;y=3 V;value=0.78;unit=ms", "y")]
    [InlineData("curves", "part=marl:I-1;curve=dead-time;x=16 V;xUnit=mV;y=3 bar;value=0.78;unit=ms", "x")]
    [InlineData("curves", "part=marl:I-1;curve=dead-time;x=16;y=3 bar;value=0.78;unit=ms", "xUnit")] // the unit was not typed at all
    [InlineData("companions", "companion=c;whenPosition=main-shaft;whenFeature=outer;whenRelation=at-least;whenValue=3 kg;thenPosition=front-bush;thenFeature=bore;thenRelation=at-least;thenValue=25 mm", "whenValue")]
    [InlineData("companions", "companion=c;whenPosition=main-shaft;whenFeature=outer;whenRelation=at-least;whenValue=3 mm;thenPosition=front-bush;thenFeature=bore;thenRelation=at-least;thenValue=25", "thenUnit")]
    [InlineData("companions", "companion=c;whenPosition=main-shaft;whenFeature=nose;whenRelation=same;whenValue=3 mm;thenPosition=front-bush;thenFeature=bore;thenRelation=at-least;thenValue=25 mm", "whenValue")] // a word
    public void Fault_of_a_typed_quantity_is_told_at_the_cell_it_was_typed_in(string table, string cells, string column) =>
        Assert.Equal([column], Assert.IsType<EditOutcome.Faulty>(_base.Apply(EditBase.Add(table, cells.Split(';')))).Faults.Select(fault => RowCells.NameOf(fault.Column!)));

    [Fact]
    public void Key_can_change_where_nothing_names_it()
    {
        var done = _base.Done(_base.Change("works-done", "it-0001,ream-bush", "item=it-0002"));

        Assert.Equal(["it-0002,ream-bush"], done.Rows.Select(row => row.Key));
        Assert.Null(_base.Row("works-done", "it-0001,ream-bush"));
        Assert.IsType<EditOutcome.InUse>(_base.Apply(_base.Change("variants", "la", "variant=lx")));
    }

    // Both books have an ev-0001: whatever the size of a page, each row is on one page, once.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(6)]
    public void Rows_of_used_books_with_the_same_key_are_each_on_one_page(int limit)
    {
        var seen = new List<string>();
        RowPage page;
        RowPlace? after = null;
        do
        {
            page = _base.Rows.List(EditBase.Book, "evidence", new RowsWanted(null, [], WithUsed: true, limit, after));
            seen.AddRange(page.Rows.Select(row => $"{row.Key} {row.Book}"));
            after = page.Next;
        }
        while (after is not null);

        Assert.Equal(["ev-0001 lark-2", "ev-0001 shared", "ev-0002 lark-2", "ev-0003 lark-2", "ev-0004 lark-2", "ev-0005 lark-2"], seen);
        Assert.Equal(6, page.Total);
    }

    // Renamed, the old book would stay beside the new one; a second such row would be a book that nobody has checked.
    [Fact]
    public void Book_keeps_its_name_and_the_one_row_that_says_which_it_is()
    {
        var before = _base.Everything();
        var renamed = Assert.IsType<EditOutcome.Faulty>(_base.Apply(_base.Change("book", EditBase.Book, "book=wren-4")));
        var second = Assert.IsType<EditOutcome.Faulty>(_base.Apply(EditBase.Add("book", "format=1", "book=wren-4", "kind=common", "title=Wren 4")));

        Assert.All([Assert.Single(renamed.Faults), Assert.Single(second.Faults)], fault => Assert.Equal(("book", "wren-4", EditBase.Book), (fault.Column, fault.Found, fault.Suggestion)));
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Row_sent_as_it_is_changes_nothing()
    {
        var before = _base.History.List(new(null, null, null, 10, null)).Total;
        Assert.IsType<EditOutcome.Same>(_base.Apply(_base.Change("variants", "la")));
        Assert.Equal(before, _base.History.List(new(null, null, null, 10, null)).Total);
    }

    [Fact]
    public void New_book_begins_with_the_row_that_says_which_it_is()
    {
        Assert.IsType<EditOutcome.NoBook>(_base.ApplyTo("wren-4", EditBase.Add("variants", "variant=wa", "name=WA")));
        var outcome = _base.ApplyTo(
            "wren-4",
            EditBase.Add("book", "format=1", "book=wren-4", "kind=family", "title=Wren 4", "maker=marl", "uses=shared"),
            EditBase.Add("makers", "maker=marl", "name=Marl Engines"));
        Assert.True(outcome is EditOutcome.Done, EditBase.Show(outcome));
        Assert.Contains(_base.Base.Books.List(), book => book.Book == "wren-4");
    }

    [Fact]
    public void Feature_that_changes_its_type_is_in_use_and_one_that_nobody_uses_is_not()
    {
        var outcome = _base.ApplyTo("shared", new RowChange("features", "shaft,lobes", null, EditBase.Cells("kind=shaft", "feature=lobes", "name=lobes", "type=quantity", "unit=mm")));
        Assert.True(outcome is EditOutcome.Done, EditBase.Show(outcome));
        outcome = _base.ApplyTo("shared", new RowChange("features", "shaft,nose", null, EditBase.Cells("kind=shaft", "feature=nose", "name=nose", "type=count")));
        Assert.IsType<EditOutcome.InUse>(outcome);
    }

    [Fact]
    public async Task Editors_at_the_same_time_all_get_through_or_are_told()
    {
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 24).Select(number => Task.Run(() => number % 2 == 0
            ? _base.Apply(EditBase.Add("evidence", $"evidence=ev-1{number:000}", "grade=reported"))
            : _base.Apply(_base.Change("variants", "la", $"name=LA {number}")))));

        Assert.Equal(12, outcomes.Count(outcome => outcome is EditOutcome.Done { Rows: [{ Table: "evidence" }] }));
        Assert.All(outcomes, outcome => Assert.True(outcome is EditOutcome.Done or EditOutcome.Stale, EditBase.Show(outcome)));

        // Each editor that got through built on the one before: the history is one chain.
        var names = _base.History.List(new("lark-2", "variants", "la", 100, null)).Changes.SelectMany(change => change.Rows).Reverse().ToList();
        foreach (var (earlier, later) in names.Zip(names.Skip(1)))
        {
            Assert.Equal(earlier.After?["name"], later.Before?["name"]);
        }
    }

    [Theory]
    [InlineData("values", "part=marl:S-100;feature=outer;value=24.9;unit=mm;evidence=ev-0005", "evidence")] // speaks of one item
    [InlineData("readings", "item=it-0002;feature=outer;value=24.9;unit=mm", "feature")] // an injector has none
    [InlineData("readings", "item=it-0009;feature=outer;value=24.9;unit=mm", "item")]
    [InlineData("readings", "item=it-0001;feature=present;value=yes", "feature")]
    [InlineData("findings", "finding=fi-9;part=marl:I-1;variant=la;position=front-bush;axis=mounts;outcome=no;evidence=ev-0001", "part")] // no bush
    [InlineData("findings", "finding=fi-9;part=none;variant=la;position=front-bush;axis=runs;outcome=yes;evidence=ev-0001", "outcome")]
    [InlineData("findings", "finding=fi-9;part=none;variant=la;position=front-bush;axis=runs;outcome=same", "evidence")]
    [InlineData("findings", "finding=fi-9;part=none;variant=la;position=front-bush;axis=runs;outcome=same;with=front-bush=none;evidence=ev-0001", "with")]
    [InlineData("findings", "finding=fi-9;part=none;variant=la;position=front-bush;axis=runs;outcome=same;with=injector=marl:S-100;evidence=ev-0001", "with")]
    [InlineData("findings", "finding=fi-9;part=none;variant=la;position=front-bush;axis=runs;outcome=same;with=injektor=none;evidence=ev-0001", "with")]
    [InlineData("findings", "finding=fi-9;part=none;variant=la;position=front-bush;axis=runs;outcome=same;serialFrom=9;serialTo=8;evidence=ev-0001", "serialTo")]
    [InlineData("limits", "kind=shaft;feature=nose;min=1;max=2;unit=mm;consequence=loss", "feature")] // a choice does not wear
    [InlineData("limits", "kind=bush;feature=bore;min=2;max=1;unit=mm;consequence=loss", "max")]
    [InlineData("limits", "kind=bush;feature=bore;unit=mm;consequence=loss", "min")]
    [InlineData("limits", "kind=bush;feature=bore;part=marl:S-100;min=1;unit=mm;consequence=loss", "part")] // a shaft
    [InlineData("limits", "kind=bush;feature=bore;part=marl:b 1/2;min=1;unit=mm;consequence=loss", "part")] // written marl:B-1/2
    [InlineData("limits", "kind=bush;feature=bore;part=marl:B-9;min=1;unit=mm;consequence=loss", "part")] // no such part
    [InlineData("limits", "kind=bush;feature=bore;part=none;min=1;unit=mm;consequence=loss", "part")] // nothing does not wear
    [InlineData("limits", "kind=shaft;feature=outer;part=marl:S-100;min=24;unit=mm;consequence=loss", "kind")] // stands already
    [InlineData("sources", "evidence=ev-0002;hours=12", "hours")] // measured, not run
    [InlineData("sources", "evidence=ev-0002;output=12;outputUnit=mm", "outputUnit")]
    [InlineData("sources", "evidence=ev-0002;output=12", "outputUnit")]
    [InlineData("sellers", "seller=s;name=S;currency=JPY;shippingFixed=9.50", "shippingFixed")] // the yen has no decimals
    [InlineData("sellers", "seller=s;name=S;currency=EUR;restocking=100.5", "restocking")]
    [InlineData("sellers", "seller=s;name=S;country=gb", "country")]
    [InlineData("sellers", "seller=s;name=S;daysMin=5;daysMax=4", "daysMax")]
    [InlineData("sellers", "seller=s;name=S;freeFrom=100", "currency")]
    [InlineData("offers", "offer=o;seller=millrace;price=9;currency=GBP;seenOn=2026-06-01", "numberAsWritten")] // of what?
    [InlineData("offers", "offer=o;seller=millrace;numberAsWritten=- -;price=9;currency=GBP;seenOn=2026-06-01", "numberAsWritten")] // a key of nothing
    [InlineData("offers", "offer=o;seller=millrace;numberAsWritten=QZ12345678901234567890123456789012345678901;price=9;currency=GBP;seenOn=2026-06-01", "numberAsWritten")] // 41
    [InlineData("offers", "offer=o;seller=nobody;numberAsWritten=QZ-1;price=9;currency=GBP;seenOn=2026-06-01", "seller")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:B-9;price=9;currency=GBP;seenOn=2026-06-01", "part")]
    [InlineData("offers", "offer=o;seller=millrace;part=none;price=9;currency=GBP;seenOn=2026-06-01", "part")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9.505;currency=GBP;seenOn=2026-06-01", "price")] // pence have no halves
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=0;currency=GBP;seenOn=2026-06-01", "price")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=1000000001;currency=GBP;seenOn=2026-06-01", "price")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=JPY;coreDeposit=1.5;seenOn=2026-06-01", "coreDeposit")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=JPY;shipping=1.5;seenOn=2026-06-01", "shipping")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;seenOn=2026-06", "seenOn")] // ages are counted in days
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;pack=0;seenOn=2026-06-01", "pack")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;stock=1000001;seenOn=2026-06-01", "stock")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;condition=not-stated;seenOn=2026-06-01", "condition")] // leave it empty
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;level=half;seenOn=2026-06-01", "level")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;daysMin=6;daysMax=5;seenOn=2026-06-01", "daysMax")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;restocking=101;seenOn=2026-06-01", "restocking")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;returnable=no;returnsDays=14;seenOn=2026-06-01", "returnsDays")]
    [InlineData("offers", "offer=o;seller=millrace;part=marl:S-100;price=9;currency=GBP;listing=0000000000000000000000000000000000000000000000000000000000000000;seenOn=2026-06-01", "listing")]
    [InlineData("listings", "listing=0000000000000000000000000000000000000000000000000000000000000000;text=words;seenOn=2026-06-01", "listing")] // not the digest of these words
    [InlineData("listings", "listing=dba36bffa5cab0f922d087a3aeb179f9d4e745df40b323e1b1471402848c8a3e;seenOn=2026-06-01", "text")]
    [InlineData("photos", "photo=ph-2;image=0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef.jpg;item=it-0001", "image")] // not in the base
    [InlineData("photos", "photo=ph-2;image=tang.jpg;item=it-0001", "image")]
    [InlineData("works-done", "item=it-0002;work=ream-bosh", "work")]
    public void Fault_of_a_row_is_told_at_its_column(string table, string cells, string column) =>
        Assert.Equal([column], Assert.IsType<EditOutcome.Faulty>(_base.Apply(EditBase.Add(table, cells.Split(';')))).Faults.Select(fault => fault.Column));
}

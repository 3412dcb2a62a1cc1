using Dapper;
using PartMatch.Storage.Books;
using PartMatch.Storage.Families;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

/// <summary>Books that use books that use books.</summary>
public sealed class ScopeTests : IDisposable
{
    private readonly TempBase _temp = new();

    public ScopeTests() => _temp.Load(SampleBook.Common().Files, Between().Files, Family().Files);

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void Family_sees_through_the_book_it_uses_into_the_one_that_book_uses()
    {
        var facts = new FamilyStore(_temp.Database).FindFamily("lark-2");
        Assert.NotNull(facts?.FindKind("hinge"));
        Assert.Equal(["bore", "flange", "grooves", "lining"], facts?.GetKind("bush").Features.Select(feature => feature.Code));
        Assert.NotNull(facts?.FindPart("orrin:B-77"));
    }

    [Fact]
    public void Replacing_the_innermost_book_looks_at_everything_that_uses_it()
    {
        var without = SampleBook.Common().Change("kinds.csv", "bush,Bush,cannot-alter,yes,\n", "").Change("features.csv", "bush,bore,bore,quantity,mm,\n", "")
            .Change("features.csv", "bush,grooves,grooves,count,,\n", "").Change("features.csv", "bush,lining,lining,choices,,bronze|polymer|tin\n", "").Remove("rules.csv").Remove("checks.csv")
            .Remove("shots.csv").Remove("reminders.csv").Remove("works.csv").Remove("parts.csv");
        var inUse = Assert.IsType<ImportOutcome.InUse>(_temp.Import(without.Files, ImportMode.Replace));
        Assert.Equal(["between", "lark-2"], inUse.Users.Select(user => user.Book).Distinct().Order());
        Assert.Contains(inUse.Users, user => user is { Book: "between", File: "features.csv", Key: "bush,flange" });
        Assert.Contains(inUse.Users, user => user is { Book: "lark-2", File: "positions.csv", Key: "front-bush" });
    }

    [Fact]
    public void Kind_in_two_used_books_is_refused()
    {
        _temp.Load(SampleBook.Common().Change("book.csv", "1,shared", "1,again").Remove("parts.csv").Remove("reminders.csv").Remove("works.csv").Remove("rules.csv").Remove("features.csv").Remove("checks.csv").Remove("shots.csv").Files);
        var refused = Assert.IsType<ImportOutcome.Refused>(_temp.Import(Family().Change("book.csv", ",between,", ",again|between,").Files, ImportMode.Replace));
        Assert.Contains(refused.Errors, error => error is { File: "book.csv", Column: "uses" } && error.Reason == "'bush' stands in kinds.csv of both again and shared");
    }

    [Fact]
    public void Evidence_that_two_used_books_have_must_be_the_own_books()
    {
        _temp.Load(Between().Write("evidence.csv", "evidence,grade,date,author,source,derived_from,retracted_on,retracted_why\nev-0001,reported,,,letter,,,\n").Files);
        var refused = Assert.IsType<ImportOutcome.Refused>(
            _temp.Import(Family().Change("evidence.csv", "ev-0001,", "ev-0009,").Change("sources.csv", "ev-0001,", "ev-0009,").Files, ImportMode.Replace));
        Assert.All(refused.Errors, error => Assert.Equal("cite evidence of this book", error.Suggestion));
        Assert.Contains(refused.Errors, error => error is { File: "parts.csv", Line: 2, Column: "evidence", Value: "ev-0001" });
    }

    [Fact]
    public void Computed_columns_follow_the_text()
    {
        using var connection = _temp.Database.Connect();
        Assert.Equal(4000, connection.ExecuteScalar<long>("select price_minor from works where work = 'ream-bush'"));
        Assert.Equal(0.0254, connection.ExecuteScalar<double>("""select value_si from "values" where value = '25.400'"""), 12);
        Assert.Equal(("marl", "B12", "marl:B12", "shared"), connection.QuerySingle<(string, string, string, string)>("select maker, number_key, part_key, kind_book from parts where part = 'marl:B-1/2'"));
        Assert.Equal("lark-2", connection.ExecuteScalar<string>("select evidence_book from parts where part = 'marl:B-1/2'"));
        Assert.Null(connection.ExecuteScalar<string>("select part_key from fitments where part = 'none'"));
    }

    /// <summary>Uses the common book and gives one of its kinds a feature more.</summary>
    private static SampleBook Between() => SampleBook.Common()
        .Change("book.csv", "1,shared,common,Shared kinds,,,", "1,between,common,Between,,shared,")
        .Write("kinds.csv", "kind,name,running,reviewed,cautions\nhinge,Hinge,cannot-alter,no,\n")
        .Write("features.csv", "kind,feature,name,type,unit,choices\nbush,flange,flange,quantity,mm,\n")
        .Remove("makers.csv").Remove("parts.csv").Remove("rules.csv").Remove("checks.csv").Remove("shots.csv").Remove("works.csv")
        .Remove("evidence.csv");

    private static SampleBook Family() => SampleBook.Family().Change("book.csv", ",shared,", ",between,");
}

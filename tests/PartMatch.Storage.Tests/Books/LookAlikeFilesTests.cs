using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

/// <summary>Pairs, shots and access times across files and books: what one row rests on in another.</summary>
public sealed class LookAlikeFilesTests : IDisposable
{
    private const string ShotsHeader = "kind,shot,name,shows,how\n";

    private readonly TempBase _temp = new();

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void List_of_a_shot_comes_out_in_order()
    {
        _temp.Load(SampleBook.Common().Change("shots.csv", "nose|outer", "outer|nose").Files);
        BookAssert.Equal(SampleBook.Common().Files, _temp.Books.Export("shared")!);
    }

    [Fact]
    public void Label_check_is_as_good_as_a_photo() =>
        _temp.Load(SampleBook.Common().Change("checks.csv", "nose,photo", "nose,label").Files);

    [Fact]
    public void Feature_that_only_the_eye_sees_is_no_feature_of_a_photograph()
    {
        var error = Assert.Single(Refused(SampleBook.Common().Change("checks.csv", "nose,photo", "nose,eye")));
        Assert.Equal(("shots.csv", 3, "shows", "nose|outer"), (error.File, error.Line, error.Column, error.Value));
        Assert.StartsWith("'nose' of the kind shaft has neither", error.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Checks_that_could_not_be_read_are_not_called_missing() =>
        Assert.All(Refused(SampleBook.Common().Change("checks.csv", "minutes", "minuets")), error => Assert.Equal("checks.csv", error.File));

    [Fact]
    public void Family_may_photograph_a_kind_of_the_book_it_uses_by_that_books_checks()
    {
        var family = SampleBook.Family().Write("shots.csv", ShotsHeader + "shaft,end,front end,nose,turn the front end to the light\n");
        _temp.Load(SampleBook.Common().Files, family.Files);
        BookAssert.Equal(family.Files, _temp.Books.Export("lark-2")!);
        Assert.Equal(["end", "mark", "whole"], new PartMatch.Storage.Families.FamilyStore(_temp.Database).FindFamily("lark-2")?.GetKind("shaft").Shots.Select(shot => shot.Code));

        var inUse = Assert.IsType<ImportOutcome.InUse>(
            _temp.Import(SampleBook.Common().Change("checks.csv", "nose,photo", "nose,eye").Change("shots.csv", "nose|outer", "outer").Files, ImportMode.Replace));
        var user = Assert.Single(inUse.Users);
        Assert.Equal(("lark-2", "shots.csv", "shaft,end", "shows nose"), (user.Book, user.File, user.Key, user.Uses));
    }

    [Fact]
    public void Family_may_bring_the_check_that_its_shot_rests_on()
    {
        var family = SampleBook.Family().Write("shots.csv", ShotsHeader + "bush,side,side view,grooves,\n")
            .Write("checks.csv", "kind,feature,method,minutes,uncertainty,unit,how\nbush,grooves,photo,1,,,\n");
        _temp.Load(SampleBook.Common().Files, family.Files);
        BookAssert.Equal(family.Files, _temp.Books.Export("lark-2")!);
    }

    [Theory]
    [InlineData("shots.csv", ShotsHeader + "shaft,whole,other view,,\n", "shot", "shaft,whole")]
    [InlineData("checks.csv", "kind,feature,method,minutes,uncertainty,unit,how\nshaft,nose,photo,2,,,\n", "method", "shaft,nose,photo")]
    public void Shot_or_check_that_a_used_book_declares_is_refused(string file, string text, string column, string key)
    {
        _temp.Load(SampleBook.Common().Files);
        var error = Assert.Single(Refused(SampleBook.Family().Write(file, text)));
        Assert.Equal((file, 2, column, $"'{key}' is already declared by book shared, which this book uses"), (error.File, error.Line, error.Column, error.Reason));
    }

    [Fact]
    public void Common_book_may_not_say_how_long_a_position_takes() =>
        Assert.Contains(
            Refused(SampleBook.Common().Write("access.csv", "position,minutes,how\nfront-bush,5,\n")),
            error => error is { File: "access.csv", Line: 2, Suggestion: "move the file to the family's book" });

    [Fact]
    public void Pair_needs_both_parts_in_the_scope_of_its_book()
    {
        _temp.Load(
            SampleBook.Common().Files,
            SampleBook.Common().Change("book.csv", "1,shared", "1,other").Change("parts.csv", "orrin:B-77", "orrin:B-99").Files);
        var error = Assert.Single(Refused(SampleBook.Family().Change("pairs.csv", "orrin:B-77", "orrin:B-99")));
        Assert.Equal(("pairs.csv", 2, "part_b", "orrin:B-99"), (error.File, error.Line, error.Column, error.Value));
        Assert.Equal("no part 'orrin:B-99' in this book or shared: expected one of parts.csv", error.Reason);
    }

    [Fact]
    public void Books_of_one_scope_may_judge_a_pair_each()
    {
        var common = SampleBook.Common().Add("parts.csv", "orrin:B-78,bush,Split bush,,")
            .Write("pairs.csv", "part_a,part_b,judgement,evidence,note\norrin:B-77,orrin:B-78,harmless,,\n");
        var family = SampleBook.Family().Add("pairs.csv", "orrin:B-78,orrin:B-77,trap,,in this engine");
        _temp.Load(common.Files, family.Files);
        BookAssert.Equal(family.Files, _temp.Books.Export("lark-2")!);
    }

    private IReadOnlyList<ImportError> Refused(SampleBook book)
    {
        var refused = Assert.IsType<ImportOutcome.Refused>(_temp.Import(book.Files));
        Assert.Equal(refused.Errors.Count, refused.Total);
        return refused.Errors;
    }
}

using System.Text.RegularExpressions;
using PartMatch.Browser.Tests.Workshop;
using PartMatch.Core.Fit;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>What holds for the text of the pages, styles and modules, without a browser.</summary>
public sealed partial class PageFilesTests
{
    private static readonly string _root = Path.Combine(Pictures.Root, "src", "PartMatch.Web", "wwwroot");

    public static TheoryData<string> Pages => [.. FilesOf("*.html")];

    public static TheoryData<string> Modules => [.. FilesOf("*.js")];

    public static TheoryData<string> Styles => [.. FilesOf("*.css")];

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_has_no_inline_script_style_or_handler_and_loads_nothing_foreign(string file)
    {
        var text = Read(file);
        Assert.Empty(InlineParts().Matches(text));
        Assert.Empty(ForeignAddresses().Matches(text));
        Assert.Contains("""<html lang="en">""", text, StringComparison.Ordinal);
        Assert.Contains("<noscript>", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_has_a_module_of_its_name(string file) =>
        Assert.True(File.Exists(Path.Combine(_root, "js", Path.ChangeExtension(file, ".js"))));

    [Theory]
    [MemberData(nameof(Modules))]
    public void A_module_never_makes_markup_from_text_and_imports_only_what_is_there(string file)
    {
        var text = Read(file);
        Assert.Empty(MarkupFromText().Matches(text));
        Assert.All(Imports().Matches(text), import => Assert.True(
            File.Exists(Path.Combine(_root, "js", import.Groups[1].Value)), $"{file} imports {import.Groups[1].Value}, which is not there"));
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void Only_the_tokens_name_colours(string file)
    {
        var text = Read(file);
        Assert.True(Path.GetFileName(file) == "tokens.css" || Colours().Count(text) == 0, $"{file} names {Colours().Match(text).Value}");
    }

    [Fact]
    public void The_pages_say_of_each_word_for_sureness_what_the_answers_say()
    {
        var text = Read("js/format.js");
        Assert.All(SurenessMeaning.All, meaning => Assert.Contains($"{meaning.Sureness.ToString().ToLowerInvariant()}: '{meaning.Text}',", text, StringComparison.Ordinal));
    }

    private static IEnumerable<string> FilesOf(string pattern) =>
        Directory.EnumerateFiles(_root, pattern, SearchOption.AllDirectories).Select(file => Path.GetRelativePath(_root, file)).Order(StringComparer.Ordinal);

    private static string Read(string file) => File.ReadAllText(Path.Combine(_root, file));

    [GeneratedRegex("""<style|\sstyle=|<script(?![^>]*\ssrc=)|\son[a-z]+=|javascript:""", RegexOptions.IgnoreCase)]
    private static partial Regex InlineParts();

    [GeneratedRegex("""(?:src|href)="(?:https?:)?//""")]
    private static partial Regex ForeignAddresses();

    [GeneratedRegex("""innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function|\.style\b|setAttribute\('style'""")]
    private static partial Regex MarkupFromText();

    [GeneratedRegex("""from '\./([^']+)'""")]
    private static partial Regex Imports();

    [GeneratedRegex("""#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(|\boklch\(""", RegexOptions.IgnoreCase)]
    private static partial Regex Colours();
}

using System.Text;
using PartMatch.Storage.Builds;
using Xunit;

namespace PartMatch.Storage.Tests.Builds;

public sealed class BuildDocumentTests
{
    private const string Least = """{"code":"spare","title":"A spare","family":"lark-2","donor":{"variant":"la","states":[]},"currency":"EUR"}""";

    [Fact]
    public void Document_with_every_member_is_read_as_it_was_written()
    {
        var document = BuildDocument.Write(AnyBuild.Of());

        Assert.Equal(document, BuildDocument.Write(AnyBuild.Read(document)));
        Assert.DoesNotContain("null", document, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', document);
        Assert.EndsWith("}\n", document, StringComparison.Ordinal);
        Assert.Contains("\"state\": \"not-inspected\"", document, StringComparison.Ordinal);
        Assert.Contains("\"budget\": \"3500.00\"", document, StringComparison.Ordinal);
    }

    [Fact]
    public void Members_in_another_order_and_other_blanks_are_the_same_document()
    {
        var turned = AnyBuild.Read("""{ "currency":"EUR","donor":{"states":[],"variant":"la"},"family":"lark-2", "title":"A spare","code":"spare" }""");

        Assert.Equal(BuildDocument.Write(AnyBuild.Read(Least)), BuildDocument.Write(turned));
    }

    [Fact]
    public void Members_left_out_mean_what_the_record_says()
    {
        var build = AnyBuild.Read(Least);

        Assert.Null(build.Target);
        Assert.Null(build.Donor.Serial);
        Assert.Null(build.OffersAtMostDaysOld);
        Assert.False(build.AdmitNotKnown);
        Assert.Empty(build.Wishes);
    }

    [Theory]
    [InlineData("\"currency\":\"EUR\"", "\"currency\":\"EUR\",\"colour\":\"red\"", "colour", "colour", "one of code, title, family, donor, target, currency")]
    [InlineData("\"states\":[]", "\"states\":[{\"position\":\"front-bush\",\"state\":\"good\",\"itme\":\"lark-2/it-1\"}]", "donor.states[0].itme", "itme", "one of position, state")]
    [InlineData("\"states\":[]", "\"states\":[{\"position\":\"front-bush\",\"state\":\"god\"}]", "donor.states[0].state", "\"god\"", "one of not-inspected, good, damaged, missing")]
    [InlineData("\"states\":[]", "\"states\":[{\"position\":\"front-bush\"}]", "donor.states[0].state", "nothing", "one of not-inspected, good, damaged, missing")]
    [InlineData("\"states\":[]", "\"states\":[null]", "donor.states[0]", "null", "a value")]
    [InlineData("\"states\":[]", "\"states\":{}", "donor.states", "an object", "a list in brackets")]
    [InlineData("\"states\":[]", "\"states\":[],\"serial\":\"41206\"", "donor.serial", "\"41206\"", "a whole number, not in quotes")]
    [InlineData("\"states\":[]", "\"states\":[],\"serial\":\"abc\"", "donor.serial", "abc", "a whole number")]
    [InlineData("\"states\":[]", "\"states\":[],\"serial\":\"2,5\"", "donor.serial", "2,5", "a whole number")]
    [InlineData("\"states\":[]", "\"states\":[],\"serial\":1.5", "donor.serial", "1.5", "a whole number, not in quotes")]
    [InlineData("\"states\":[]", "\"states\":[],\"price\":380", "donor.price", "380", "a text in quotes")]
    [InlineData("\"currency\":\"EUR\"", "\"currency\":\"EUR\",\"target\":null", "target", "null", "a value")]
    [InlineData("\"currency\":\"EUR\"", "\"currency\":\"EUR\",\"admitNotKnown\":\"yes\"", "admitNotKnown", "\"yes\"", "true or false")]
    [InlineData("\"currency\":\"EUR\"", "\"currency\":\"EUR\",\"wishes\":[{\"parts\":[5]}]", "wishes[0].parts[0]", "5", "a text in quotes")]
    [InlineData("A spare", "A \\u202Espare", "title", "\"A \\u202Espare\"", "text without control characters")]
    [InlineData("A spare", "A\\u0007 spare", "title", "\"A\\u0007 spare\"", "text without control characters")]
    [InlineData(",\"currency\":\"EUR\"", "", "currency", "nothing", "a text in quotes")]
    public void Member_that_does_not_belong_is_told_with_its_place(string was, string becomes, string field, string found, string expected)
    {
        var fault = Assert.Single(AnyBuild.Faults(Least.Replace(was, becomes, StringComparison.Ordinal)));

        Assert.Equal((field, found), (fault.Field, fault.Found));
        Assert.StartsWith(expected, fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Misspelt_member_and_code_are_told_with_what_was_meant()
    {
        Assert.Equal("did you mean currency?", AnyBuild.Faults(Least.Replace("\"currency\"", "\"curency\"", StringComparison.Ordinal))[0].Mend);
        Assert.Equal("write it as text, \"380\"", AnyBuild.Faults(Least.Replace("\"states\"", "\"price\":380,\"states\"", StringComparison.Ordinal))[0].Mend);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{\"code\":\"spare\"")]
    [InlineData("{\"code\":\"spare\",\"code\":\"other\"}")]
    [InlineData("{\"code\":\"spare\",}")]
    public void Text_that_is_no_strict_json_is_told_with_its_line(string text)
    {
        var none = Assert.IsType<BuildReading.NoJson>(BuildDocument.Read(Encoding.UTF8.GetBytes(text)));

        Assert.Equal(1, none.Line);
        Assert.NotEmpty(none.Reason);
        Assert.DoesNotContain("LineNumber", none.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("5")]
    public void Json_that_is_no_object_is_told_as_the_build(string text) => Assert.Equal("build", Assert.Single(AnyBuild.Faults(text)).Field);

    [Fact]
    public void Mark_of_byte_order_in_front_is_passed_over() =>
        Assert.IsType<BuildReading.Read>(BuildDocument.Read(new byte[] { 0xEF, 0xBB, 0xBF }.Concat(Encoding.UTF8.GetBytes(Least)).ToArray()));
}

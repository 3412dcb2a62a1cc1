using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class MixUpCostTests
{
    // Classes as J. Verhoeff defines them, Error Detecting Decimal Codes, Mathematical Centre Tract 29, 1969, on invented numbers.
    [Theory]
    [InlineData("QX41-2075-A", "QX41-2705-A", MixUpClass.AdjacentTransposition)]
    [InlineData("QX41-2075-A", "QX41-2079-A", MixUpClass.Substitution)]
    [InlineData("QX41-2075-A", "QX41-207S-A", MixUpClass.LookAlikeCharacter)]
    [InlineData("QX41-2075-A", "QX41-2O75-A", MixUpClass.LookAlikeCharacter)]
    [InlineData("QX41-2075-A", "QX41-275-A", MixUpClass.Omission)]
    [InlineData("QX41-2075-A", "QX41-20775-A", MixUpClass.Addition)]
    [InlineData("QX41-2075-A", "QX41-2075-B", MixUpClass.SuffixOnly)]
    [InlineData("131", "232", MixUpClass.JumpTwin)]
    [InlineData("2277", "2200", MixUpClass.Twin)]
    [InlineData("60", "16", MixUpClass.Phonetic)]
    [InlineData("205", "502", MixUpClass.JumpTransposition)]
    public void Each_kind_of_error_is_told_from_the_others(string asked, string other, MixUpClass expected)
    {
        Assert.Equal(expected, Between(asked, other).Class);
        Assert.Equal(Mirrored(expected), Between(other, asked).Class);
    }

    [Fact]
    public void Separators_only_are_no_difference()
    {
        var mixUp = Between("QX41-2075-A", "QX412075A");
        Assert.Null(mixUp.Class);
        Assert.Equal(0, mixUp.Cost);
        Assert.Empty(mixUp.At);
    }

    [Theory]
    [InlineData("P-26-1147-C", "P-26-1147-E", MixUpClass.SuffixOnly)]
    [InlineData("P-26-1147", "P-26-1147-E", MixUpClass.SuffixOnly)]
    [InlineData("P-26-1147-CE", "P-26-1147-F", MixUpClass.SuffixOnly)]
    [InlineData("P-26-1147-D", "P-26-1147-Q", MixUpClass.LookAlikeCharacter)] // taken for one another before they are told apart
    [InlineData("P-26-1147-CEF", "P-26-1147-CEH", MixUpClass.Substitution)] // three letters are a name, not a count of changes
    [InlineData("PUMP", "PUMA", MixUpClass.Substitution)]
    [InlineData("P-26-1147-C", "P-26-1158-C", MixUpClass.TwoErrors)]
    [InlineData("P-26-1147-C", "P-26-1174-E", MixUpClass.TwoErrors)]
    [InlineData("30", "13", MixUpClass.Phonetic)]
    [InlineData("10", "11", MixUpClass.Substitution)] // ten and eleven do not sound alike: a0 and 1a hold for a from 2 to 9
    [InlineData("P177", "P711", MixUpClass.TwoErrors)]
    public void The_edges_of_the_classes_are_where_they_are_described(string asked, string other, MixUpClass expected) =>
        Assert.Equal(expected, Between(asked, other).Class);

    // By hand. Share of wrong codes 0.01, of substitutions 0.791 (Verhoeff), plain pair 0.2, last of four places 1: −ln(0.01 × 0.791 × 0.2) = 6.449.
    [Fact]
    public void Cost_of_a_substitution_is_as_worked_out_by_hand() => Assert.Equal(6.45, Between("2074", "2079").Cost);

    // By hand: place 0 of 2 weighs 0.8: −ln(0.01 × 0.102 × 0.8) = 7.111.
    [Fact]
    public void Cost_of_a_transposition_is_as_worked_out_by_hand() => Assert.Equal(7.11, Between("34", "43").Cost);

    // By hand. O for 0 twice counts once, at the last place: −ln(0.01 × 0.791 × 0.5 × 1) = 5.533.
    // I for 1 and O for 0, at the first and the last of two places: −ln 0.01 − ln(0.791 × 0.5 × 0.8) − ln(0.791 × 0.5 × 1) = 6.684.
    [Theory]
    [InlineData("A0B0", "AOBO", 5.53)]
    [InlineData("10", "IO", 6.68)]
    public void Look_alike_characters_are_one_wrong_code_and_each_confusion_counts_once(string asked, string other, double cost) =>
        Assert.Equal(cost, Between(asked, other).Cost);

    // Each class at the first and at the last place of a number.
    private static readonly (MixUpClass Class, string Asked, string Other)[] _firstAndLast =
    [
        (MixUpClass.Substitution, "34698574", "94698574"), (MixUpClass.Substitution, "34698574", "34698579"),
        (MixUpClass.AdjacentTransposition, "34698574", "43698574"), (MixUpClass.AdjacentTransposition, "34698574", "34698547"),
        (MixUpClass.Omission, "34698574", "4698574"), (MixUpClass.Omission, "34698574", "3469857"),
        (MixUpClass.Addition, "34698574", "934698574"), (MixUpClass.Addition, "34698574", "346985749"),
        (MixUpClass.JumpTransposition, "34698574", "64398574"), (MixUpClass.JumpTransposition, "34698574", "34698475"),
        (MixUpClass.Twin, "33698574", "44698574"), (MixUpClass.Twin, "34698533", "34698544"),
        (MixUpClass.Phonetic, "60985743", "16985743"), (MixUpClass.Phonetic, "34985760", "34985716"),
        (MixUpClass.JumpTwin, "34398574", "54598574"), (MixUpClass.JumpTwin, "34698353", "34698959"),
    ];

    // Source of the order: Verhoeff 1969: substitution > adjacent transposition ≥ omission, addition > jump transposition ≥ twin ≈ phonetic > jump twin.
    [Theory]
    [InlineData(MixUpClass.Substitution, MixUpClass.AdjacentTransposition)]
    [InlineData(MixUpClass.AdjacentTransposition, MixUpClass.Omission)]
    [InlineData(MixUpClass.AdjacentTransposition, MixUpClass.Addition)]
    [InlineData(MixUpClass.Omission, MixUpClass.JumpTransposition)]
    [InlineData(MixUpClass.Addition, MixUpClass.JumpTransposition)]
    [InlineData(MixUpClass.JumpTransposition, MixUpClass.Twin)]
    [InlineData(MixUpClass.JumpTransposition, MixUpClass.Phonetic)]
    [InlineData(MixUpClass.Twin, MixUpClass.JumpTwin)]
    [InlineData(MixUpClass.Phonetic, MixUpClass.JumpTwin)]
    public void The_likelier_error_is_the_cheaper_one_wherever_in_the_number_it_is(MixUpClass likelier, MixUpClass rarer) =>
        Assert.True(CostsOf(likelier).Max() < CostsOf(rarer).Min());

    [Fact]
    public void Twins_and_sound_alikes_cost_the_same() => Assert.Equal(CostsOf(MixUpClass.Twin).Min(), CostsOf(MixUpClass.Phonetic).Min());

    private static IEnumerable<double> CostsOf(MixUpClass mixUpClass)
    {
        MixUp[] samples = [.. _firstAndLast.Where(row => row.Class == mixUpClass).Select(row => Between(row.Asked, row.Other))];
        Assert.All(samples, sample => Assert.Equal(mixUpClass, sample.Class));
        return samples.Select(sample => sample.Cost);
    }

    // Source: a study quoted in ISMP Medication Safety Alert, 12 January 2000: I/1, O/0, Z/2 and 1/7 made over half of the misread characters.
    [Theory]
    [InlineData("0", "O")]
    [InlineData("1", "I")]
    [InlineData("2", "Z")]
    [InlineData("1", "7")]
    public void Measured_confusions_are_cheaper_than_any_other_substitution(string one, string other)
    {
        Assert.True(Between($"34{one}5", $"34{other}5").Cost < Between("3425", "3475").Cost);
        Assert.True(Between($"34{one}5", $"34{other}5").Cost < Between("34S5", "3455").Cost);
        Assert.True(Between("3425", "3475").Cost < Between("3435", "3495").Cost);
    }

    [Fact]
    public void Places_name_what_stands_in_each_key()
    {
        Assert.Equal([new MixUpPlace(7, "C", "E")], Between("P-26-1147-C", "P-26-1147-E").At);
        Assert.Equal([new MixUpPlace(5, "07", "70")], Between("QX41-2075-A", "QX41-2705-A").At);
        Assert.Equal([new MixUpPlace(5, "0", "")], Between("QX41-2075-A", "QX41-275-A").At);
        Assert.Equal([new MixUpPlace(7, "", "7")], Between("QX41-2075-A", "QX41-20775-A").At);
        Assert.Equal([new MixUpPlace(7, "", "E")], Between("P-26-1147", "P-26-1147-E").At);
        Assert.Equal([new MixUpPlace(0, "P", "R"), new MixUpPlace(6, "7", "9")], Between("P-26-1147", "R-26-1149").At);
    }

    [Fact]
    public void Places_turn_the_asked_key_into_the_other() =>
        Gen.Select(Gen.String[Gen.Char["0127OSA"], 0, 8], Gen.String[Gen.Char["0127OSA"], 0, 8])
            .Sample((asked, other) => Changed(asked, MixUpCost.Between(asked, other).At) == other);

    // By hand: a jump twin at the first place: −ln(0.01 × 0.003 × 0.8) = 10.638. Two errors cost at least twice −ln(0.01 × 0.791 × 0.5) = 11.06.
    private const double DearestSingleError = 10.64;

    [Fact]
    public void One_error_is_always_cheaper_than_two() =>
        Gen.Select(Gen.String[Gen.Char["013456789ABCD"], 4, 10], Gen.String[Gen.Char["013456789ABCD"], 4, 10])
            .Where((asked, other) => MixUpCost.Between(asked, other).Class == MixUpClass.TwoErrors)
            .Sample((asked, other) => MixUpCost.Between(asked, other).Cost > DearestSingleError);

    [Fact]
    public void What_is_two_edits_away_and_no_single_error_is_called_two_errors_or_a_suffix() =>
        Gen.Select(Gen.String[Gen.Char["34679ACEF"], 6, 9], Gen.String[Gen.Char["34679ACEF"], 6, 9])
            .Where((asked, other) => NumberDistance.OptimalStringAlignment(asked, other) > 2)
            .Sample((asked, other) => MixUpCost.Between(asked, other).Class is MixUpClass.TwoErrors or MixUpClass.LookAlikeCharacter);

    private static MixUp Between(string asked, string other) => MixUpCost.Between(NumberKey.Of(asked), NumberKey.Of(other));

    private static MixUpClass Mirrored(MixUpClass mixUpClass) => mixUpClass switch
    {
        MixUpClass.Omission => MixUpClass.Addition,
        MixUpClass.Addition => MixUpClass.Omission,
        _ => mixUpClass,
    };

    private static string Changed(string asked, IEnumerable<MixUpPlace> at) =>
        at.Reverse().Aggregate(asked, (key, place) => key.Remove(place.Index, place.Asked.Length).Insert(place.Index, place.Other));
}

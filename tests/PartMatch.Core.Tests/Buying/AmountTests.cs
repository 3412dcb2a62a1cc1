using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Buying;

public sealed class AmountTests
{
    // ISO 4217: 2 decimals for EUR, none for JPY, 3 for KWD, 4 for CLF.
    [Theory]
    [InlineData("84.00", "EUR", 8400)]
    [InlineData("84", "EUR", 8400)]
    [InlineData("84.5", "EUR", 8450)]
    [InlineData("1299", "JPY", 1299)]
    [InlineData("1.299", "KWD", 1299)]
    [InlineData("0.0001", "CLF", 1)]
    public void Amount_is_a_whole_number_of_minor_units(string text, string currency, long minor) =>
        Assert.Equal((Int128)minor, Amount.Find(text, currency)?.Minor);

    [Theory]
    [InlineData("84.005", "EUR")]
    [InlineData("1299.0", "JPY")]
    [InlineData("84,00", "EUR")]
    [InlineData("", "EUR")]
    [InlineData("84.00", "EUX")]
    public void What_is_no_amount_of_the_currency_is_none(string text, string currency) => Assert.Null(Amount.Find(text, currency));

    // Banker's rounding: 0.5 of the minor unit goes to the even one.
    [Theory]
    [InlineData("0.05", 2, "0.02")] // 2.5 pence
    [InlineData("0.07", 2, "0.04")] // 3.5 pence
    [InlineData("10.00", 3, "3.33")]
    [InlineData("20.00", 3, "6.67")]
    public void Part_of_an_amount_is_rounded_half_to_even(string amount, int parts, string each) =>
        Assert.Equal(new Money(each, "GBP"), Amount.Of(new Money(amount, "GBP")).DividedBy(parts).ToMoney());

    [Theory]
    [InlineData("1.00", 4.5, "0.04")] // 4.5 pence
    [InlineData("3.00", 4.5, "0.14")] // 13.5 pence
    [InlineData("84.00", 22.5, "18.90")]
    [InlineData("84.00", 0, "0.00")]
    public void Share_of_an_amount_is_rounded_half_to_even(string amount, double percent, string share) =>
        Assert.Equal(new Money(share, "GBP"), Amount.Of(new Money(amount, "GBP")).Percent((decimal)percent).ToMoney());

    [Fact]
    public void Amounts_of_two_currencies_are_not_added() =>
        Assert.Throws<ArgumentException>(() => Amount.Of(new Money("1.00", "GBP")) + Amount.Of(new Money("1.00", "EUR")));

    // 1,000,000,000.0000 CLF times a million pieces is 10^19 minor units, more than 64 bits hold.
    [Fact]
    public void Dearest_price_times_most_pieces_does_not_wrap() =>
        Assert.Equal("1000000000000000.0000", Amount.Of(new Money("1000000000", "CLF")).Times(1_000_000).ToMoney().Amount);
}

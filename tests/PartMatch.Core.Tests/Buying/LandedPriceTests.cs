using PartMatch.Core.Buying;
using Xunit;
using static PartMatch.Core.Tests.Buying.Shop;

namespace PartMatch.Core.Tests.Buying;

public sealed class LandedPriceTests
{
    // 84.00 + (9.50 + 1.20) + 84.00 × 4.5 % = 3.78 → 98.48
    [Fact]
    public void One_piece_costs_its_price_the_usual_sending_and_the_import_charge()
    {
        var landed = LandedPrice.Of(Pump, Abel, 1);
        Assert.Equal((Pounds("84.00"), Pounds("10.70"), Pounds("3.78"), Pounds("98.48")), (landed.Goods, landed.Sending.Cost, landed.Import.Cost,
            landed.Total));
        Assert.Equal(SendingTerms.SellersUsual, landed.Sending.From);
        Assert.Empty(landed.NotKnown);
        Assert.Null(landed.AtLeast);
        Assert.Equal("84.00 GBP + 10.70 GBP sending + 3.78 GBP import charge (4.5 %) = 98.48 GBP", landed.Text);
    }

    // 5 pieces in packs of 2 are 3 packs and 6 pieces: 3 × 10.00 = 30.00; 9.50 + 6 × 1.20 = 16.70; 30.00 × 4.5 % = 1.35.
    [Fact]
    public void Pieces_come_in_whole_packs()
    {
        var landed = LandedPrice.Of(Pump with { Price = Pounds("10.00"), Pack = 2 }, Abel, 5);
        Assert.Equal((3, 1, Pounds("30.00"), Pounds("16.70"), Pounds("48.05")), (landed.Packs, landed.Surplus, landed.Goods, landed.Sending.Cost,
            landed.Total));
    }

    [Fact]
    public void Sending_of_the_offer_outranks_the_usual_one()
    {
        var landed = LandedPrice.Of(Pump with { Shipping = Pounds("0.00") }, Abel, 1);
        Assert.Equal((SendingTerms.Offer, Pounds("0.00"), Pounds("87.78")), (landed.Sending.From, landed.Sending.Cost, landed.Total));
    }

    [Theory]
    [InlineData("119.99", SendingTerms.SellersUsual)]
    [InlineData("120.00", SendingTerms.FreeAbove)]
    [InlineData("120.01", SendingTerms.FreeAbove)]
    public void Goods_of_enough_value_are_sent_free(string price, SendingTerms terms) =>
        Assert.Equal(terms, LandedPrice.Of(Pump with { Price = Pounds(price) }, Abel, 1).Sending.From);

    [Fact]
    public void Sending_that_nobody_knows_is_not_known_and_never_free()
    {
        var landed = LandedPrice.Of(Pump, Abel with { ShippingFixed = null, ShippingPerItem = null, FreeFrom = null }, 1);
        Assert.Equal(SendingTerms.NotKnown, landed.Sending.From);
        Assert.Null(landed.Sending.Cost);
        Assert.Null(landed.Total);
        Assert.Equal(["sending"], landed.NotKnown);
        Assert.Equal(Pounds("87.78"), landed.AtLeast); // 84.00 + 3.78
    }

    // What a piece adds is empty, which is not known: at least the parcel.
    [Fact]
    public void Half_known_sending_is_a_lower_bound()
    {
        var landed = LandedPrice.Of(Pump, Abel with { ShippingPerItem = null }, 1);
        Assert.Null(landed.Sending.Cost);
        Assert.Equal((Pounds("9.50"), Pounds("97.28")), (landed.Sending.AtLeast, landed.AtLeast));
    }

    [Fact]
    public void Import_charge_that_nobody_knows_keeps_the_total_open()
    {
        var landed = LandedPrice.Of(Pump, Abel with { ImportChargePercent = null }, 1);
        Assert.Null(landed.Total);
        Assert.Equal(["import charge"], landed.NotKnown);
        Assert.Equal(Pounds("94.70"), landed.AtLeast);
    }

    // 84.00 + 10.70; the seller is in GB.
    [Theory]
    [InlineData("GB", "GB", "94.70")]
    [InlineData("GB", "DE", null)]
    [InlineData("GB", null, null)]
    [InlineData(null, "GB", null)]
    public void Seller_of_ones_own_country_charges_no_import_unless_the_seller_row_says_so(string? country, string? home, string? total)
    {
        var landed = LandedPrice.Of(Pump, Abel with { ImportChargePercent = null, Country = country }, 1, home);
        Assert.Equal(total, landed.Total?.Amount);
        Assert.Equal(total is null, landed.Import.Missing is not null);
        Assert.Equal("98.48", LandedPrice.Of(Pump, Abel with { Country = country }, 1, home).Total?.Amount); // 4.5 % are recorded, see above
    }

    [Theory]
    [InlineData(null, null, "the import charge in the seller's row; or the seller's country there and your own in the setting PartMatch:Country, in case they are one")]
    [InlineData("GB", null, "the import charge in the seller's row; or your own country in the setting PartMatch:Country, in case it is GB as well")]
    [InlineData(null, "DE", "the import charge in the seller's row; or the seller's country there, in case it is DE as well")]
    [InlineData("GB", "DE", "the import charge in the seller's row, for goods from GB to DE")]
    public void Import_charge_that_is_not_known_says_what_would_have_to_be_recorded(string? country, string? home, string missing) =>
        Assert.Equal(missing, LandedPrice.Of(Pump, Abel with { ImportChargePercent = null, Country = country }, 1, home).Import.Missing);

    [Fact]
    public void Usual_sending_in_another_currency_is_not_reckoned_without_a_rate()
    {
        var landed = LandedPrice.Of(Pump with { Price = Euros("84.00") }, Abel, 1);
        Assert.Equal(["sending"], landed.NotKnown);
        Assert.Contains("the seller's usual is in GBP, the price in EUR", landed.Sending.Text, StringComparison.Ordinal);
        Assert.Equal(Euros("87.78"), landed.AtLeast);
    }

    [Fact]
    public void Pack_of_unknown_size_is_paid_once_for_one_piece_and_not_reckoned_for_two()
    {
        var unknown = Pump with { Pack = null, Shipping = Pounds("5.00") };
        Assert.Equal(Pounds("92.78"), LandedPrice.Of(unknown, Abel, 1).Total); // 84.00 + 5.00 + 3.78
        var two = LandedPrice.Of(unknown, Abel, 2);
        Assert.Null(two.Goods);
        Assert.Null(two.AtLeast);
        Assert.Equal("not known: how many pieces the price is for", two.Text);
    }

    [Fact]
    public void Core_deposit_stands_beside_the_total()
    {
        var landed = LandedPrice.Of(Pump with { CoreDeposit = Pounds("20.00") }, Abel, 2);
        Assert.Equal(Pounds("40.00"), landed.CoreDeposit);
        Assert.Equal(Pounds("175.56"), landed.Total); // 168.00, free from 120.00, + 7.56
        Assert.EndsWith("; besides 40.00 GBP deposit, paid back for the old part", landed.Text, StringComparison.Ordinal);
    }

    // Stock counts packs: two packs of three are six pieces, and seven pieces need a third pack.
    [Theory]
    [InlineData(1, 2, 2, null)]
    [InlineData(1, 2, 3, 1)]
    [InlineData(3, 2, 6, null)]
    [InlineData(3, 2, 7, 1)]
    [InlineData(3, 1, 12, 3)]
    [InlineData(3, 0, 1, 1)]
    [InlineData(null, 1, 12, null)] // how many packs twelve are is not known
    [InlineData(null, 0, 12, 1)] // but one at the least
    [InlineData(3, null, 99, null)]
    public void Packs_in_stock_that_do_not_suffice_are_told(int? pack, int? stock, int pieces, int? shortBy) =>
        Assert.Equal(shortBy, LandedPrice.Of(Pump with { Pack = pack, Stock = stock }, Abel, pieces).ShortBy);
}

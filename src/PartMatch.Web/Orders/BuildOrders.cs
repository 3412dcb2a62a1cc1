using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Orders;
using PartMatch.Storage.Orders;
using PartMatch.Web.Http;

namespace PartMatch.Web.Orders;

/// <summary>What was bought for a build.</summary>
internal sealed class BuildOrders(OrderStore orders)
{
    /// <param name="day">What is known of that day; null for everything that was told.</param>
    /// <returns>What a plan rests on; or the order that is in another currency than the build is now.</returns>
    public (BuildBought Bought, FieldError? Other) Find(Build build, DateOnly? day)
    {
        var known = List(build.Code, day);
        return known.FirstOrDefault(order => order.Terms.Currency != build.Currency) is { } other
            ? (BuildBought.None, new FieldError(
                "currency", build.Currency, string.Create(CultureInfo.InvariantCulture, $"{other.Terms.Currency}, in which order {other.Number} of the build was made"),
                "a build whose orders are under way keeps its currency: change it back"))
            : (BuildBought.Of(build.Currency, known), null);
    }

    public IReadOnlyList<Order> List(string build, DateOnly? day) => orders.List(build) switch
    {
        var all when day is { } asked => [.. all.Select(order => OrderFold.AsOf(order, asked)).OfType<Order>()],
        var all => all,
    };
}

using System.Globalization;
using PartMatch.Core.Orders;
using PartMatch.Web.Http;

namespace PartMatch.Web.Orders;

/// <summary>Says why nothing was told of an order.</summary>
internal static class OrderProblems
{
    public static Absent NoOrder(string build, string order) => new(new FieldError(
        "order", order, $"the number of an order of {build}", $"they are listed at {OrderLinks.ToAll(build)}"));

    public static Refused Faulty(params IReadOnlyList<OrderFault> faults) => new(Problem.Of(
        "bad-order", [.. faults.Select(fault => new FieldError(fault.Field, fault.Found, fault.Expected, fault.Mend))]));

    public static Stale VersionNeeded() => new(Problem.Of("version-needed", new FieldError(
        "If-Match", "nothing", "the version of the order that was seen, in quotes", "read the order again: its ETag is its version")));

    public static Stale OrdersVersionNeeded(string build) => new(Problem.Of("version-needed", new FieldError(
        "If-Match", "nothing", "the version of the orders that were seen, in quotes", $"read {OrderLinks.ToAll(build)}: its ETag is their version")));

    /// <summary>The same may have been ordered from another page: who orders looks first.</summary>
    public static Stale Overtaken(IReadOnlyList<Order> since, string seen) => new(
        Problem.Of("stale", new FieldError(
            "If-Match", seen, since is [.., var last] ? $"\"{last.Number}\", the version there is now" : "a version that the orders had",
            since.Count == 0 ? "read the orders again" : $"{string.Join(' ', since.Select(Say))} Look at it, then order what is still wanted with the present version")) with
        {
            OrderedMeanwhile = since,
        });

    private static string Say(Order order) => string.Create(
        CultureInfo.InvariantCulture,
        $"Meanwhile order {order.Number} was made{(order.Terms.Seller is { } seller ? $", of {seller.Split('/')[^1]}" : "")}: {string.Join(", ", order.Lines.Select(line => $"{line.Agreed.Pieces} × {line.Agreed.Name}"))}.");

    public static Stale Outdated(Order present, int? seen) => new(
        Problem.Of("stale", new FieldError(
            "If-Match", string.Create(CultureInfo.InvariantCulture, $"{seen}"), $"\"{present.Version}\", the version there is now",
            "somebody told something of it meanwhile: look at it, then tell yours again with the present version")) with
        {
            PresentOrder = present,
        });
}

internal static class OrderLinks
{
    public static string ToAll(string build) => Core.Catalogue.Permalink.To("/api/builds", build, "orders").ToString();

    public static string To(Order order) =>
        Core.Catalogue.Permalink.To("/api/builds", order.Build, "orders", order.Number.ToString(CultureInfo.InvariantCulture)).ToString();
}

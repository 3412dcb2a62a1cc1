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

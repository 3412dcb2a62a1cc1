using PartMatch.Core.Orders;
using PartMatch.Core.Planning;

namespace PartMatch.Web.Orders;

/// <summary>What was bought for a build, and its money.</summary>
/// <param name="Orders">In the order in which they were made.</param>
/// <param name="Version">How many were ever made, also after the day that was asked for. It is the ETag, to be named in If-Match by whoever orders more.</param>
public sealed record OrdersAnswer(OrdersAsked Asked, int Version, IReadOnlyList<Order> Orders, BuildMoney Money, string Permalink);

/// <param name="WithPlan">Was what is to go worked out?</param>
public sealed record OrdersAsked(string Build, int Version, PlanObjective Objective, bool WithPlan, DateOnly On);

/// <summary>One order. Its version is the ETag, to be named in If-Match by whoever tells something of it.</summary>
public sealed record OrderAnswer(OrderAskedFor Asked, Order Order, string Permalink)
{
    internal static OrderAnswer Of(Order order, string? who, string? why) => new(new OrderAskedFor(order.Build, order.Number, who, why), order, OrderLinks.To(order));
}

public sealed record OrderAskedFor(string Build, int Order, string? Who, string? Why);

namespace PartMatch.Core.Orders;

/// <summary>Orders of a build with what happened to them, as one file.</summary>
/// <param name="Build">Its code.</param>
/// <param name="Orders">In the order in which they were made.</param>
public sealed record OrderFile(string Build, IReadOnlyList<OrderInFile> Orders);

/// <param name="Events">In the order in which they were told.</param>
public sealed record OrderInFile(OrderAsked Ordered, IReadOnlyList<OrderEvent> Events);

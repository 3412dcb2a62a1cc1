namespace PartMatch.Core.Orders;

/// <summary>Is a payment what is owed? Any other amount needs a word of what it means, so that no slip settles an order.</summary>
/// <remarks>Asked when it is told and not when the order is read: orders from before the words keep what they came to.</remarks>
internal static class PaymentCheck
{
    public static OrderFault? FaultOf(Order order, OrderEvent did)
    {
        var said = new[] { ("inPart", did.InPart), ("settles", did.Settles), ("aboveAgreed", did.AboveAgreed) }.Where(one => one.Item2).Select(one => one.Item1).ToList();
        if (said.Count > 0 && (did.Act != OrderAct.Paid || did.Amount is null))
        {
            return new OrderFault(said[0], "true", "a payment with its amount", "leave it out, or say how much was paid");
        }

        if (did.Act != OrderAct.Paid || did.Amount is null)
        {
            return null;
        }

        if (said.Count > 1)
        {
            return new OrderFault(said[1], "true", "one of inPart, settles and aboveAgreed", $"leave it out, or leave {said[0]} out");
        }

        var currency = order.Terms.Currency;
        var (paid, owed) = (OrderText.Minor(did.Amount, currency), OrderText.Minor(order.Money.Owed.Amount, currency));
        var typed = $"{did.Amount} {currency}";
        return paid < owed && !did.InPart && !did.Settles
            ? new OrderFault(
                "amount", typed, $"{order.Money.Owed.Amount} {currency}, which is owed, or a word of what less means",
                "say that it is a part and more is to be paid (inPart), or that it settles the order (settles)")
            : paid > owed && !did.AboveAgreed
                ? new OrderFault(
                    "amount", typed, $"at most {order.Money.Owed.Amount} {currency}, which is owed",
                    "mend the amount; where that much was paid, say that it is more than was agreed (aboveAgreed)")
            : did.Settles && paid >= owed ? new OrderFault("settles", typed, $"less than {order.Money.Owed.Amount} {currency}, which is owed", "leave settles out: it is all of it")
            : did.AboveAgreed && paid <= owed
                ? new OrderFault("aboveAgreed", typed, $"more than {order.Money.Owed.Amount} {currency}, which is owed", "leave aboveAgreed out")
            : null;
    }
}

using PartMatch.Core.Measures;

namespace PartMatch.Core.Orders;

/// <summary>The money of an order, event by event, in minor units.</summary>
internal sealed class OrderPayments(OrderTerms terms)
{
    private readonly long _sending = OrderText.Minor(terms.Sending, terms.Currency);
    private long _paid;
    private long _sentBack;
    private long _refunded;
    private long _depositsBack;
    private long _depositsKept;
    private long _charged;
    private bool _isSettled;

    public bool HasRefunds => _refunded > 0;

    /// <param name="lines">As they are after the event.</param>
    public OrderFault? Apply(OrderEvent did, OrderedPieces lines)
    {
        switch (did.Act)
        {
            case OrderAct.Paid:
                var rest = Goods(lines) + Deposits(lines) - _paid;
                if (did.Amount is null && (_isSettled || rest <= 0))
                {
                    return new OrderFault("amount", "nothing", "an amount", "everything that was agreed is paid: say how much more it was");
                }

                _paid += did.Amount is null ? rest : Minor(did);
                _isSettled |= !did.InPart;
                return null;
            case OrderAct.Refunded:
                _refunded += Minor(did);
                return Need(did) ?? (_refunded <= _paid + _sentBack - _depositsBack - Kept ? null : TooMuch(did, "what was paid and has not come back"));
            case OrderAct.DepositBack:
                return Deposit(did, lines, ref _depositsBack);
            case OrderAct.DepositKept:
                return Deposit(did, lines, ref _depositsKept);
            case OrderAct.Charged:
                _charged += Minor(did);
                return did.Amount is null ? new OrderFault("amount", "nothing", "an amount", "say how much the seller takes for it")
                    : !_isSettled || _refunded <= _paid + _sentBack - _depositsBack - Kept ? null
                    : TooMuch(did, "what was paid and has not come back; where it is paid besides, tell that first");
            case OrderAct.Returned:
                _sentBack += Minor(did);
                return null;
            default:
                return null;
        }
    }

    /// <summary>What the seller has and does not give back. What is charged before everything is paid, is to be paid.</summary>
    private long Kept => _depositsKept + (_isSettled ? _charged : 0);

    /// <summary>Deposits that come back or are kept: all that are held where no amount is said.</summary>
    private OrderFault? Deposit(OrderEvent did, OrderedPieces lines, ref long told)
    {
        var held = Held(lines);
        told += did.Amount is null ? held : Minor(did);
        return held > 0 && (did.Amount is null || Minor(did) <= held) ? null : TooMuch(did, "the deposits that were paid and have not come back");
    }

    public OrderMoney Now(OrderedPieces lines)
    {
        var held = Held(lines);
        var back = _refunded + _depositsBack;
        return new OrderMoney(
            Of(Goods(lines)), Of(_paid + _sentBack), Of(back), Of(_paid + _sentBack - back - held),
            Of(_isSettled ? 0 : Math.Max(0, Goods(lines) - _paid)), Of(held))
        {
            IsSettled = _isSettled,
            Owed = Of(_isSettled ? 0 : Math.Max(0, Goods(lines) + Deposits(lines) - _paid)),
        };
    }

    /// <summary>Goods, import charges and sending of what is neither cancelled nor sent back, and what was charged for taking back.</summary>
    private long Goods(OrderedPieces lines) => (lines.IsAllCancelled ? 0 : _sending) + _charged + lines.Held.Sum(line => OrderText.Share(
        OrderText.Minor(line.Agreed.Price, terms.Currency) + OrderText.Minor(line.Agreed.Import, terms.Currency), line.Held, line.Agreed.Pieces));

    private long Deposits(OrderedPieces lines) =>
        lines.Held.Sum(line => OrderText.Share(OrderText.Minor(line.Agreed.Deposit, terms.Currency), line.Held, line.Agreed.Pieces));

    /// <summary>Deposits that were paid and come back; of a payment in part the goods are paid first. Ours, no source.</summary>
    private long Held(OrderedPieces lines)
    {
        var most = _isSettled ? _paid : Math.Max(0, _paid - Goods(lines));
        return Math.Max(0, Math.Min(Math.Min(Deposits(lines), most) - _depositsBack - _depositsKept, _paid - _refunded - _depositsBack - _depositsKept));
    }

    private long Minor(OrderEvent did) => OrderText.Minor(did.Amount, terms.Currency);

    private Money Of(long minor) => new Amount(minor, terms.Currency).ToMoney();

    private static OrderFault? Need(OrderEvent did) => did.Amount is not null ? null : new OrderFault("amount", "nothing", "an amount", "say how much came back");

    private static OrderFault TooMuch(OrderEvent did, string most) =>
        new("amount", did.Amount ?? "nothing", $"at most {most}", "see what was paid; what was told by mistake can be withdrawn");
}

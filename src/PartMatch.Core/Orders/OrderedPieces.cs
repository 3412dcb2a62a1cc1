using System.Globalization;

namespace PartMatch.Core.Orders;

/// <summary>Where the pieces of an order are, event by event.</summary>
internal sealed class OrderedPieces(OrderTerms terms)
{
    private readonly Line[] _lines = [.. terms.Lines.Select((line, index) => new Line(index + 1, line))];

    /// <summary>Of every line, so many of its pieces that are to be paid or stay paid.</summary>
    public IEnumerable<(OrderLine Agreed, int Held)> Held => _lines.Select(line => (line.Agreed, line.Pieces.Held));

    public bool IsAllCancelled => _lines.All(line => line.Pieces.Cancelled == line.Agreed.Pieces);

    public OrderFault? Apply(OrderEvent did) => did.Act switch
    {
        OrderAct.Arrived => Each(did, line => line.Pieces.OnTheWay, (line, pieces) => line.Arrive(did, pieces), "nothing of it is on the way"),
        OrderAct.Cancelled => Each(did, line => line.Pieces.OnTheWay, (line, pieces) => line.Cancel(pieces), "nothing of it is on the way any more"),
        OrderAct.Checked => One(did, line => line.Unchecked, (line, pieces) => line.Check(did, pieces), "nothing of it is left to be checked"),
        OrderAct.Wrong => FaultOfFault(did) ?? One(did, line => line.CanBeWrong, (line, pieces) => line.FindWrong(did, pieces), "nothing of it is there"),
        OrderAct.Returned => One(did, line => line.CanGoBack, (line, pieces) => line.Return(did, pieces), "nothing of it is there to be sent back"),
        _ => null,
    };

    public IReadOnlyList<LineNow> Now(bool hasRefunds) => [.. _lines.Select(line => line.Now(hasRefunds))];

    private static OrderFault? FaultOfFault(OrderEvent did) => (did.Fault, did.Sent) switch
    {
        (null, _) => new OrderFault("fault", "nothing", "other-part, beyond-limits or damaged", "say what is wrong with it"),
        (not ArrivalFault.OtherPart, { } sent) => new OrderFault("sent", sent, "nothing", "only another part is sent instead: say other-part, or leave sent out"),
        _ => null,
    };

    /// <summary>Every line where none is named.</summary>
    private OrderFault? Each(OrderEvent did, Func<Line, int> there, Action<Line, int> move, string none)
    {
        if (did.Line is not null || did.Pieces is not null || _lines.Length == 1)
        {
            return One(did, there, move, none);
        }

        var moved = _lines.Where(line => there(line) > 0).ToList();
        moved.ForEach(line => move(line, there(line)));
        return moved.Count > 0 ? null : new OrderFault("act", none, "an order of which something is on the way", "see how far it has come already");
    }

    private OrderFault? One(OrderEvent did, Func<Line, int> there, Action<Line, int> move, string none)
    {
        var number = did.Line ?? (_lines.Length == 1 ? 1 : 0);
        if (number < 1 || number > _lines.Length)
        {
            return new OrderFault(
                "line", did.Line is null ? "nothing" : string.Create(CultureInfo.InvariantCulture, $"{did.Line}"),
                string.Create(CultureInfo.InvariantCulture, $"a line of the order, 1 to {_lines.Length}"), "say which of them");
        }

        var line = _lines[number - 1];
        var (most, pieces) = (there(line), did.Pieces ?? there(line));
        if (most == 0 || pieces < 1 || pieces > most)
        {
            return new OrderFault(
                most == 0 ? "act" : "pieces", most == 0 ? none : string.Create(CultureInfo.InvariantCulture, $"{pieces}"),
                most == 0 ? "pieces that this can happen to" : string.Create(CultureInfo.InvariantCulture, $"1 to {most} pieces"),
                "see how far the line has come already; what was told by mistake can be withdrawn");
        }

        move(line, pieces);
        return null;
    }

    private sealed class Line(int number, OrderLine agreed)
    {
        private readonly List<CameWrong> _wrong = [];
        private readonly List<string> _items = [];
        private readonly List<string> _right = [];
        private DateOnly? _arrivedOn;
        private bool _wasLookedAt;

        public OrderLine Agreed => agreed;

        public LinePieces Pieces { get; private set; } = new(agreed.Pieces, 0, 0, 0, 0, 0);

        /// <summary>What is looked at has come, whether or not anybody said so.</summary>
        public int Unchecked => Pieces.Arrived > 0 ? Pieces.Arrived : Pieces.OnTheWay;

        /// <summary>What was found right may be found wrong later, when it is fitted.</summary>
        public int CanBeWrong => Unchecked > 0 ? Unchecked : Pieces.Checked;

        public int CanGoBack => Pieces.Wrong > 0 ? Pieces.Wrong : Pieces.Arrived > 0 ? Pieces.Arrived : Pieces.Checked;

        public void Arrive(OrderEvent did, int pieces)
        {
            _arrivedOn ??= OrderText.Day(did.On);
            Pieces = Pieces with { OnTheWay = Pieces.OnTheWay - pieces, Arrived = Pieces.Arrived + pieces };
        }

        public void Cancel(int pieces) => Pieces = Pieces with { OnTheWay = Pieces.OnTheWay - pieces, Cancelled = Pieces.Cancelled + pieces };

        public void Check(OrderEvent did, int pieces)
        {
            Come(did, pieces);
            Pieces = Pieces with { Arrived = Pieces.Arrived - pieces, Checked = Pieces.Checked + pieces };
            _right.AddRange(did.Item is { } item ? [item] : []);
            Measured(did);
        }

        public void FindWrong(OrderEvent did, int pieces)
        {
            if (Unchecked > 0)
            {
                Come(did, pieces);
                Pieces = Pieces with { Arrived = Pieces.Arrived - pieces, Wrong = Pieces.Wrong + pieces };
            }
            else
            {
                Pieces = Pieces with { Checked = Pieces.Checked - pieces, Wrong = Pieces.Wrong + pieces };
                Forget(did.Item);
            }

            _wrong.Add(new CameWrong(pieces, did.Fault ?? ArrivalFault.OtherPart, did.Sent, OrderText.Day(did.On), did.Note)); // a fault was checked to be there
            Measured(did);
        }

        public void Return(OrderEvent did, int pieces)
        {
            if (Pieces is { Wrong: 0, Arrived: 0 })
            {
                Pieces = Pieces with { Checked = Pieces.Checked - pieces, Returned = Pieces.Returned + pieces };
                Forget(did.Item);
                return;
            }

            Pieces = Pieces.Wrong > 0 ? Pieces with { Wrong = Pieces.Wrong - pieces, Returned = Pieces.Returned + pieces }
                : Pieces with { Arrived = Pieces.Arrived - pieces, Returned = Pieces.Returned + pieces };
        }

        public LineNow Now(bool hasRefunds) => new(number, agreed, State(hasRefunds), Pieces, _arrivedOn, _wrong, _items)
        {
            WasLookedAt = _wasLookedAt,
            CheckedItems = [.. _right.Distinct()],
            ReturnBy = ReturnDeadline.Of(agreed.Returns, _arrivedOn),
            ReturnText = _arrivedOn is null ? null : ReturnDeadline.Say(agreed.Returns, _arrivedOn),
        };

        /// <summary>Of pieces that were right: the one that was read goes where it is named; where none is, nobody knows which of them stay.</summary>
        private void Forget(string? item)
        {
            if (item is null || !_right.Remove(item))
            {
                _right.Clear();
            }
        }

        private void Come(OrderEvent did, int pieces)
        {
            if (Pieces.Arrived == 0)
            {
                Arrive(did, pieces);
            }
        }

        private void Measured(OrderEvent did)
        {
            _wasLookedAt = true;
            if (did.Item is { } item)
            {
                _items.Add(item);
            }
        }

        private LineState State(bool hasRefunds) => Pieces switch
        {
            { Wrong: > 0 } => LineState.Wrong,
            { Arrived: > 0 } => LineState.Arrived,
            { OnTheWay: > 0 } => LineState.Ordered,
            { Checked: > 0 } => LineState.Checked,
            { Returned: > 0 } => hasRefunds ? LineState.Refunded : LineState.Returned,
            _ => LineState.Cancelled,
        };
    }
}

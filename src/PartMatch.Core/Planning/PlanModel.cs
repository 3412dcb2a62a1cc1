namespace PartMatch.Core.Planning;

/// <summary>A problem as variables and constraints, without an objective. Days are added by <see cref="PlanSchedule"/> where they count.</summary>
/// <remarks>
/// What costs is bounded from one side only (a parcel is at least paid for): whatever is minimised makes it exact, and a limit holds in the model where it
/// holds in truth.
/// </remarks>
internal sealed class PlanModel
{
    private readonly PlanProblem _problem;
    private readonly IReadOnlySet<int> _dropped;
    private readonly SortedDictionary<int, int> _flagged = [];

    /// <param name="dropped">Grounds that do not hold.</param>
    /// <param name="flagged">Grounds that hold while their flag is set: see <see cref="Flagged"/>. Money and time always hold for good.</param>
    /// <param name="isPaid">Does the cost count where nothing limits it?</param>
    public PlanModel(PlanProblem problem, IReadOnlySet<int> dropped, IReadOnlySet<int> flagged, bool isPaid)
    {
        (_problem, _dropped) = (problem, dropped);
        IsPaid = isPaid || (problem.MostCost is { } limit && Holds(limit.Ground));
        foreach (var ground in flagged.Except(dropped))
        {
            _flagged[ground] = Constraints.Flag();
        }

        Needs = new PlanNeeds(problem);
        Choices = [.. problem.Places.Select(place => place.Choices.Select(_ => Constraints.Flag()).ToArray())];
        Packs = [.. Needs.Packs.Select(most => Constraints.Variable(0, most))];
        Jobs = [.. problem.Jobs.Select(_ => Constraints.Flag())];
        Doubts = [.. problem.Doubts.Select(doubt => Constraints.Variable(0, doubt.IsAdmitted ? 1 : 0))];
        for (var place = 0; place < Choices.Length; place++)
        {
            AddPlace(Choices[place], problem.Places[place].Ground);
        }

        AddWeights();
        Parcels = new PlanParcels(problem, this, IsPaid);
        AddSupply();
        AddRules();
        if (problem.MostCost is { } most && Holds(most.Ground))
        {
            Constraints.AtMost(Cost, most.Limit);
        }
    }

    public ConstraintModel Constraints { get; } = new();

    /// <summary>Does the cost count? Where it does not, <see cref="Cost"/> knows of no sending.</summary>
    public bool IsPaid { get; }

    /// <summary>For each ground that holds while its flag is set, that flag.</summary>
    public IReadOnlyDictionary<int, int> Flagged => _flagged;

    public PlanNeeds Needs { get; }

    public int[][] Choices { get; }

    /// <summary>For each offer the packs that are there to be used; those that only make a parcel free stand in <see cref="Parcels"/>.</summary>
    public int[] Packs { get; }

    public PlanParcels Parcels { get; }

    public int[] Jobs { get; }

    public int[] Doubts { get; }

    public LinearSum Cost { get; } = new();

    public LinearSum Risk { get; } = new();

    public LinearSum Kept { get; } = new();

    /// <summary>The very last tie: offers by their rank, choices in their order, so that the same question has the same answer.</summary>
    public LinearSum Order { get; } = new();

    /// <summary>What is done or bought at all: a tie, so that nothing that costs nothing is done for nothing.</summary>
    public LinearSum Doings { get; } = new();

    /// <summary>For each product, who takes how much of it.</summary>
    public LinearSum Demand(IEnumerable<PlanTake> takes)
    {
        var sum = new LinearSum();
        foreach (var take in takes)
        {
            sum.Add(Choices[take.Place][take.Choice], take.Pieces);
        }

        return sum;
    }

    public bool Holds(int? ground) => ground is not { } one || !_dropped.Contains(one);

    /// <summary>Nothing where it holds for good; otherwise a flag, set where the ground does not hold.</summary>
    private int[] Unless(int? ground) => ground is { } one && _flagged.TryGetValue(one, out var flag) ? [ConstraintModel.Not(flag)] : [];

    private void AddPlace(IReadOnlyList<int> choices, int? ground)
    {
        var unless = Unless(ground);
        if (Holds(ground) && unless.Length == 0)
        {
            Constraints.ExactlyOne(choices);
            return;
        }

        Constraints.AtMostOne(choices);
        if (Holds(ground))
        {
            Constraints.AnyOf([.. choices, .. unless]);
        }
    }

    private void AddRules()
    {
        foreach (var rule in _problem.Rules.Where(rule => Holds(rule.Ground)))
        {
            Constraints.AnyOf([.. rule.If.Select(fact => ConstraintModel.Not(Flag(fact))), .. rule.Then.Select(Flag), .. Unless(rule.Ground)]);
        }

        foreach (var (offer, sold) in _problem.Offers.Index())
        {
            if (sold.Ground is { } ground && _flagged.TryGetValue(ground, out var flag))
            {
                Constraints.AtMost(Parcels.Bought(offer), 0, flag);
            }
        }
    }

    private int Flag(PlanFact fact) => fact switch
    {
        ChoiceMade made => Choices[made.Place][made.Choice],
        JobDone done => Jobs[done.Job],
        DoubtTaken taken => Doubts[taken.Doubt],
        _ => throw new ArgumentException($"found a fact of the kind {fact.GetType().Name}, expected a choice, a job or a doubt"),
    };

    private void AddWeights()
    {
        Cost.Add(_problem.FixedCost);
        for (var place = 0; place < Choices.Length; place++)
        {
            for (var index = 0; index < Choices[place].Length; index++)
            {
                var choice = _problem.Places[place].Choices[index];
                Cost.Add(Choices[place][index], choice.Cost);
                Risk.Add(Choices[place][index], choice.Risk);
                Kept.Add(Choices[place][index], choice.Kept);

                // By place, so that one thing here and another there is not the same as the other way round.
                Order.Add(Choices[place][index], index * (place + 1L));
            }
        }

        for (var offer = 0; offer < Packs.Length; offer++)
        {
            Cost.Add(Packs[offer], _problem.Offers[offer].Price);
            Doings.Add(Packs[offer], 1);
            Order.Add(Packs[offer], _problem.Offers[offer].Rank);
        }

        for (var job = 0; job < Jobs.Length; job++)
        {
            Cost.Add(Jobs[job], _problem.Jobs[job].Cost);
            Doings.Add(Jobs[job], 1);
        }

        for (var doubt = 0; doubt < Doubts.Length; doubt++)
        {
            Risk.Add(Doubts[doubt], _problem.Doubts[doubt].Risk);
            Doings.Add(Doubts[doubt], 1);
        }
    }

    private void AddSupply()
    {
        var supplies = _problem.Products.Select(_ => new LinearSum()).ToArray();
        var offers = _problem.Products.Select(_ => new List<int>()).ToArray();
        for (var offer = 0; offer < Packs.Length; offer++)
        {
            foreach (var (product, pieces) in PlanNeeds.Pieces(_problem.Offers[offer].Holds).Where(held => held.Value > 0 && Needs.Packs[offer] > 0))
            {
                supplies[product].Add(Packs[offer], pieces);
                offers[product].Add(offer);
            }
        }

        foreach (var product in Enumerable.Range(0, supplies.Length).Where(product => Needs.Missing[product] > 0))
        {
            var inHand = _problem.Products[product].InHand;
            Constraints.AtMost(Demand(Needs.Takes[product]).Add(supplies[product], -1), inHand);
            AddCover([.. Needs.Takes[product].Where(take => take.Pieces > inHand)], Parcels.Of(offers[product]));
        }
    }

    /// <summary>Follows from the rest, but not for fractions: whoever takes a product that is not in hand needs one of its senders.</summary>
    private void AddCover(IReadOnlyList<PlanTake> takes, IReadOnlyList<int>? senders)
    {
        if (senders is null)
        {
            return;
        }

        foreach (var here in takes.GroupBy(take => take.Place))
        {
            var sum = new LinearSum();
            foreach (var take in here)
            {
                sum.Add(Choices[take.Place][take.Choice], 1);
            }

            foreach (var sender in senders)
            {
                sum.Add(sender, -1);
            }

            Constraints.AtMost(sum, 0);
        }
    }
}

namespace PartMatch.Core.LookAlikes;

/// <summary>How readily one number is taken for another: a noisy channel between what was meant and what was read.</summary>
/// <remarks>
/// Cost = −ln P(read | meant), each error weighing (share of wrong codes) × (share of its class) × (weight of the characters) × (weight of the
/// place). It orders what the distance has found and hides nothing. Sources: <see cref="ErrorShares"/>, <see cref="CharacterConfusions"/>.
/// </remarks>
public static class MixUpCost
{
    private const int LongestSuffix = 2;

    /// <summary>The cheapest way from one key to the other.</summary>
    /// <param name="meant">The key asked about.</param>
    /// <param name="read">The key it could be taken for.</param>
    public static MixUp Between(string meant, string read)
    {
        if (meant == read)
        {
            return new MixUp(null, 0, []);
        }

        if (FoldingClasses.Fold(meant) == FoldingClasses.Fold(read))
        {
            return LookAlikeCharacters(meant, read);
        }

        var (cost, path) = Cheapest(meant, read);
        var mixUpClass = DifferInSuffixOnly(meant, read) ? MixUpClass.SuffixOnly
            : path.Count == 1 ? path[0].Step.Class
            : MixUpClass.TwoErrors;
        return new MixUp(mixUpClass, Rounded(cost), [.. path.Select(taken => taken.Place(meant, read))]);
    }

    // Someone who reads O for 0 does so all along the number: one wrong code, and each confusion counts once, at its likeliest place. Ours, no source.
    private static MixUp LookAlikeCharacters(string meant, string read)
    {
        MixUpPlace[] at =
        [
            .. Enumerable.Range(0, meant.Length).Where(index => meant[index] != read[index])
                .Select(index => new MixUpPlace(index, meant[index].ToString(), read[index].ToString())),
        ];
        var weights = at.GroupBy(
            place => (place.Asked, place.Other),
            (_, same) => same.Max(place => Weight(MixUpClass.Substitution, meant, place.Index, read[place.Index])));
        return new MixUp(MixUpClass.LookAlikeCharacter, Rounded(weights.Sum(weight => -Math.Log(weight)) - Math.Log(ErrorShares.WrongCodes)), at);
    }

    private sealed record Taken(MixUpStep Step, int Meant, int Read)
    {
        public MixUpPlace Place(string meant, string read) => new(Meant, meant.Substring(Meant, Step.Meant), read.Substring(Read, Step.Read));
    }

    // Shortest path over (characters of meant used, characters of read made), from the ends to the beginning.
    private static (double Cost, IReadOnlyList<Taken> Path) Cheapest(string meant, string read)
    {
        var cost = new double[meant.Length + 1, read.Length + 1];
        var best = new MixUpStep?[meant.Length + 1, read.Length + 1];
        var steps = new List<MixUpStep>();
        for (var from = meant.Length; from >= 0; from--)
        {
            for (var to = read.Length; to >= 0; to--)
            {
                var equal = from < meant.Length && to < read.Length && meant[from] == read[to];
                var ended = from == meant.Length && to == read.Length;
                cost[from, to] = equal ? cost[from + 1, to + 1] : ended ? 0 : double.PositiveInfinity;
                steps.Clear();
                MixUpStep.Collect(meant.AsSpan(from), read.AsSpan(to), steps);
                foreach (var step in steps)
                {
                    var through = StepCost(step, meant, from, read, to) + cost[from + step.Meant, to + step.Read];
                    if (through < cost[from, to])
                    {
                        (cost[from, to], best[from, to]) = (through, step);
                    }
                }
            }
        }

        return (cost[0, 0], Walk(best, meant.Length, read.Length));
    }

    private static List<Taken> Walk(MixUpStep?[,] best, int meantLength, int readLength)
    {
        var path = new List<Taken>();
        var (from, to) = (0, 0);
        while (from < meantLength || to < readLength)
        {
            if (best[from, to] is { } step)
            {
                path.Add(new Taken(step, from, to));
                (from, to) = (from + step.Meant, to + step.Read);
            }
            else
            {
                (from, to) = (from + 1, to + 1);
            }
        }

        return path;
    }

    internal static double StepCost(MixUpStep step, string meant, int from, string read, int to) =>
        -Math.Log(ErrorShares.WrongCodes * Weight(step.Class, meant, from, step.Class == MixUpClass.Substitution ? read[to] : default));

    private static double Weight(MixUpClass counted, string meant, int index, char read) =>
        ErrorShares.Of(counted)
        * ErrorShares.PlaceWeight(index, meant.Length)
        * (counted == MixUpClass.Substitution ? CharacterConfusions.Weight(meant[index], read) : 1);

    private static bool DifferInSuffixOnly(string meant, string read)
    {
        var (left, right) = (StemLength(meant), StemLength(read));
        return left == right && left > 0
            && meant.Length - left <= LongestSuffix && read.Length - right <= LongestSuffix
            && meant.AsSpan(0, left).SequenceEqual(read.AsSpan(0, right));
    }

    // Up to and including the last digit.
    private static int StemLength(string key) => key.AsSpan().LastIndexOfAnyInRange('0', '9') + 1;

    internal static double Rounded(double cost) => Math.Round(cost, 2, MidpointRounding.ToEven);
}

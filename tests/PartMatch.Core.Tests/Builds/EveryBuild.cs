using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Tests.Builds;

/// <summary>One way to build: what is at each position, what is bought, and what it comes to in cents, days, parts kept and doubts.</summary>
/// <param name="Parts">Of grades all of them, parted by a stroke.</param>
internal sealed record OneBuild(IReadOnlyDictionary<string, (string Part, bool IsDonors)> Parts, long Cost, int Days, int Kept, long Risk);

/// <summary>What could be at a position.</summary>
/// <param name="Parts">Several where one of them will be there.</param>
/// <param name="IsGraded">Which one, is measured.</param>
internal sealed record Line(string Position, IReadOnlyList<Part> Parts, bool IsDonors, bool IsGraded)
{
    public string Key { get; } = string.Join('|', Parts.Select(part => part.Id));

    public bool IsNothing => Parts is [{ IsNothing: true }];
}

/// <summary>
/// Every way to build, by trying everything: each position with the donor's own, each part for sale or nothing, every basket, the work done or not, and
/// <i>will it fit</i> asked of every line with all the others beside it. It shares nothing with the planner.
/// </summary>
/// <param name="dropped">Wishes that do not count, by the names of a conflict.</param>
internal sealed class EveryBuild(TestBuild told, IReadOnlySet<string>? dropped = null)
{
    // What the surest plan weighs, as its documentation has it: nobody knows; kept and not looked at; by how well a line is proven.
    private const long OnTrust = 10_000;
    private const long NotInspected = 20;

    private readonly BuildFacts _facts = told.Facts();
    private readonly EveryBasket _baskets = new(told, dropped);
    private readonly Dictionary<string, FitAnswer> _answers = [];

    private enum Outcome
    {
        Holds,
        WithWork,
        NotKnown,
        Fails,
    }

    public List<OneBuild> All()
    {
        IEnumerable<Line[]> all = [[]];
        foreach (var position in _facts.Family.Positions)
        {
            all = [.. all.SelectMany(_ => LinesAt(position), (lines, line) => (Line[])[.. lines, line])];
        }

        return
        [
            .. all.Select(lines => (Lines: lines, Held: Hold(lines))).Where(one => one.Held is not null)
                .Where(one => IsRenewed(one.Lines))
                .SelectMany(one => _baskets.Of(one.Lines, one.Held!.Value.IsWorked, Cures(one.Lines)).Select(bought => new OneBuild( // it holds
                    one.Lines.ToDictionary(line => line.Position, line => (line.Key, line.IsDonors)), bought.Cost, bought.Days,
                    one.Lines.Count(line => line.IsDonors), one.Held.Value.Risk + bought.Risk))),
        ];
    }

    /// <summary>Does nothing stay that is renewed because something else is changed, or has to come off for it?</summary>
    private bool IsRenewed(Line[] lines)
    {
        var disturbed = Disturbed(lines);
        return _facts.Family.Renewals.Where(row => row.Evidence?.IsRetracted == false && disturbed.Contains(row.Opened))
            .All(row => !lines.Single(line => line.Position == row.Renewed).IsDonors);
    }

    private HashSet<string> Disturbed(Line[] lines)
    {
        bool IsThere(string position) => Fitted("lark", position).Length > 0 && StateOf(position)?.State != PartState.Missing;
        HashSet<string> disturbed = [.. lines.Where(line => !line.IsDonors && (!line.IsNothing || IsThere(line.Position))).Select(line => line.Position)];
        var before = -1;
        while (before < disturbed.Count)
        {
            before = disturbed.Count;
            disturbed.UnionWith(_facts.Family.Openings.Where(row => row.Evidence?.IsRetracted == false && disturbed.Contains(row.Position) && IsThere(row.OffFirst))
                .Select(row => row.OffFirst));
        }

        return disturbed;
    }

    /// <summary>How many days what is opened cures, and what has to be there before it is closed: all beneath any joint that cures so long.</summary>
    private List<(int Days, HashSet<string> After)> Cures(Line[] lines)
    {
        var disturbed = Disturbed(lines);
        var cures = _facts.Family.Renewals.Where(row => row is { CureHours: > 0, Evidence.IsRetracted: false })
            .GroupBy(row => row.CureHours <= 24 ? 1 : 2).Where(rows => rows.Any(row => disturbed.Contains(row.Opened)));
        return [.. cures.Select(rows => (rows.Key, rows.SelectMany(row => Beneath(row.Opened).Append(row.Renewed)).ToHashSet()))];
    }

    /// <summary>Itself, and all for which it has to be off; the random openings go three deep at most.</summary>
    private IEnumerable<string> Beneath(string position) =>
        [position, .. _facts.Family.Openings.Where(row => row.Evidence?.IsRetracted == false && row.OffFirst == position).SelectMany(row => Beneath(row.Position))];

    private bool Counts(string wish) => dropped?.Contains(wish) != true;

    private List<Wish> WishesAt(string position) => [.. told.Build.Wishes.Where(wish => wish.Position == position)];

    private DonorState? StateOf(string position) => told.Build.Donor.States.LastOrDefault(state => state.Position == position);

    private Part[] Fitted(string variant, string position) =>
        [.. _facts.Family.FitmentsAt(variant, position).Select(fitment => fitment.Part).OfType<string>().Distinct().Select(_facts.Family.GetPart)];

    private IEnumerable<Line> LinesAt(Position position)
    {
        var wishes = WishesAt(position.Code);
        var isGraded = _facts.Family.Selects.Any(row => row.Position == position.Code);
        Part[] obtainable = [.. _baskets.Obtainable.Select(_facts.Family.FindPart).OfType<Part>().Where(part => part.Kind == position.Kind)];
        Part[][] sets = isGraded
            ? [.. _facts.Family.Variants.Select(variant => Fitted(variant.Code, position.Code)).Where(set => set.Any(obtainable.Contains)).DistinctBy(Key)]
            : [];
        var isGone = StateOf(position.Code)?.State is PartState.Damaged or PartState.Missing;
        Line[] lines =
        [
            .. !isGone && Fitted("lark", position.Code) is [_, ..] own ? [new Line(position.Code, own, IsDonors: true, isGraded)] : Array.Empty<Line>(),
            .. (sets.Length > 0 ? sets : [.. obtainable.Select(part => new[] { part })]).Select(
                set => new Line(position.Code, set, IsDonors: false, IsGraded: sets.Length > 0)),
            new Line(position.Code, [Part.Nothing(position.Kind)], IsDonors: false, IsGraded: false),
        ];
        return lines
            .Where(line => line.Parts.All(part => !wishes.Any(wish => wish.Refuse.Contains(part.Id)) || !Counts($"refuse:{position.Code}:{part.Id}")))
            .Where(line => !line.IsDonors || KeepAt(position.Code) != KeepWish.Renew || !Counts($"renew:{position.Code}"))
            .Where(line => line.IsDonors || KeepAt(position.Code) != KeepWish.Keep || !Counts($"keep:{position.Code}"));
    }

    private KeepWish KeepAt(string position) => WishesAt(position).LastOrDefault(wish => wish.Keep != KeepWish.Either)?.Keep ?? KeepWish.Either;

    private static string Key(IReadOnlyList<Part> parts) => string.Join('|', parts.Select(part => part.Id));

    /// <summary>Whether work is needed, and how unsure it is; null where a line does not hold.</summary>
    private (bool IsWorked, long Risk)? Hold(Line[] lines) => Hold(lines, isWorked: false) is { IsWorked: true } ? Hold(lines, isWorked: true) : Hold(lines, isWorked: false);

    /// <param name="isWorked">Is the one work of the family done, so that what it touches is no more as it was built?</param>
    private (bool IsWorked, long Risk)? Hold(Line[] lines, bool isWorked)
    {
        var risk = 0L;
        var isAsked = false;
        foreach (var line in lines)
        {
            var (outcome, answer, sureness) = OutcomeOf(line, lines, isWorked);
            if (outcome == Outcome.Fails || (outcome == Outcome.NotKnown && (!IsTrusted(line.Position) || IsMissed(line))))
            {
                return null;
            }

            isAsked |= outcome != Outcome.Holds && answer.Works.Count > 0;
            risk += outcome == Outcome.NotKnown ? OnTrust : sureness switch
            {
                Sureness.Proven => 0,
                Sureness.Documented => 1,
                Sureness.Indicated => 10,
                _ => 30,
            };
            risk += line.IsDonors && (StateOf(line.Position)?.State ?? PartState.NotInspected) == PartState.NotInspected ? NotInspected : 0;
        }

        return (isAsked, risk);
    }

    private bool IsTrusted(string position) => told.Build.AdmitNotKnown || WishesAt(position).Exists(wish => wish.AdmitNotKnown);

    /// <summary>What an engine as wished has is not left off on trust.</summary>
    private bool IsMissed(Line line) => line.IsNothing
        && LikeAt(line.Position).Any(variant => _facts.Family.FitmentsAt(variant, line.Position).Any(fitment => fitment.Part is not null));

    /// <summary>Of grades the best counts, because the one that suits is chosen; of what nobody has looked at the worst.</summary>
    private (Outcome Outcome, FitAnswer Answer, Sureness Sureness) OutcomeOf(Line line, Line[] lines, bool isWorked)
    {
        var each = line.Parts.Select(part => Ask(line, part, lines)).Select(answer => IsAsChosen(line, answer)
            ? (answer.Mounts.Value == Mounts.WithWork ? Outcome.WithWork : Outcome.Holds, answer, answer.Mounts.Sureness)
            : (OutcomeOf(answer), answer, answer.Sureness)).ToList();
        var best = line.IsGraded ? each.MinBy(one => one.Item1) : each.MaxBy(one => one.Item1);
        return best.Item1 == Outcome.Holds || !IsAsBuilt(line, lines, isWorked)
            ? best
            : (Outcome.Holds, best.Item2, (Sureness)int.Max((int)best.Item3, (int)Sureness.Indicated));
    }

    /// <summary>Who insists on keeping it chose how it runs by itself, as far as that is known.</summary>
    private bool IsAsChosen(Line line, FitAnswer answer) => line.IsDonors && KeepAt(line.Position) == KeepWish.Keep && answer.AlsoNeeded.Count == 0
        && answer.Headline is Headline.MountsButRunsDifferently or Headline.NotKnownYet && answer.Mounts.Value is Mounts.Yes or Mounts.WithWork
        && answer.Reasons.Where(reason => reason.Axis == Axis.Runs && reason.Met != Met.Yes).All(reason => reason.By is ReasonBy.Identity or ReasonBy.Kind
            || (reason.By == ReasonBy.Feature && reason.Met == Met.No)
            || (reason.By == ReasonBy.Finding && answer.Findings.Any(found => found.Code == reason.Code && found.Rank is null)));

    /// <summary>Does it stay, where the donor's way is wished, and with it all that its answer can look at?</summary>
    private bool IsAsBuilt(Line line, Line[] lines, bool isWorked)
    {
        var reach = Neighbours.Reach(_facts.Family, "lark", line.Position).ToHashSet();
        return ReferenceOf(line) == "lark" && lines.Where(other => other.Position == line.Position || reach.Contains(other.Position)).All(IsTheDonors)
            && !(isWorked && _facts.Family.Works.SelectMany(work => work.Changes).Any(change => reach.Contains(change.Split('.')[0])));
    }

    private bool IsTheDonors(Line line) => line.Key == (Fitted("lark", line.Position) is [_, ..] own ? Key(own) : Part.None);

    private static Outcome OutcomeOf(FitAnswer answer) => answer switch
    {
        { AlsoNeeded.Count: > 0 } => Outcome.Fails,
        { Headline: Headline.Fits } => Outcome.Holds,
        { Headline: Headline.FitsWithWork } => Outcome.WithWork,
        { Headline: Headline.NotKnownYet } when answer.Runs.CouldBe.Contains(Runs.Same) => Outcome.NotKnown,
        _ => Outcome.Fails,
    };

    private FitAnswer Ask(Line line, Part part, Line[] lines)
    {
        var key = $"{line.Position}:{line.IsGraded}:{part.Id}:{string.Join(' ', lines.Select(one => one.Key))}";
        var others = lines.Where(other => other.Position != line.Position).ToLookup(other => other.Parts.Count == 1);
        return _answers.TryGetValue(key, out var known) ? known : _answers[key] = FitCheck.Decide(
            _facts.Family, new FitQuestion(
                ReferenceOf(line), line.Position, part,
                With: others[true].ToDictionary(other => other.Position, other => other.IsNothing ? null : other.Parts[0]))
            {
                Beside = others[false].ToDictionary(other => other.Position, other => new OneOfThese(other.Parts, other.IsGraded)),
            });
    }

    /// <summary>The first engine it is wished like on which it is at home, else the one it is wished like most.</summary>
    private string ReferenceOf(Line line)
    {
        var like = LikeAt(line.Position);
        return like.FirstOrDefault(variant => line.Parts.All(part => IsAtHome(part, variant, line.Position))) ?? like[0];
    }

    private string[] LikeAt(string position) => [.. WishesAt(position).SelectMany(wish => wish.Like).DefaultIfEmpty("swift")];

    private bool IsAtHome(Part part, string variant, string position) => part.IsNothing
        ? _facts.Family.FitmentsAt(variant, position).Any(fitment => fitment.Part is null)
        : Fitted(variant, position).Any(own => own == part || _facts.Family.Supersessions.Any(link =>
            (link.OldPart == own.Id && link.NewPart == part.Id) || (link.Way == SupersessionWay.Both && link.NewPart == own.Id && link.OldPart == part.Id)));
}

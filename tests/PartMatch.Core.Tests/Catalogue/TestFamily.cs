using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Measures;
using PartMatch.Core.Variants;

namespace PartMatch.Core.Tests.Catalogue;

/// <summary>
/// An invented family, told fact by fact, so that a test shows everything its answer rests on. Its variants are <c>lark</c> and <c>swift</c>
/// unless a test names others; every part is of the invented maker <c>alder</c>, written without the maker; lengths are in mm; a fact without
/// evidence of its own rests on a maker's document.
/// </summary>
internal sealed class TestFamily
{
    private readonly List<Variant> _variants = [];
    private readonly List<Kind> _kinds = [];
    private readonly List<Position> _positions = [];
    private readonly List<Part> _parts = [];
    private readonly List<Work> _works = [];
    private readonly List<Fitment> _fitments = [];
    private readonly List<Need> _needs = [];
    private readonly List<Joint> _joints = [];
    private readonly List<Stack> _stacks = [];
    private readonly List<Companion> _companions = [];
    private readonly List<Supersession> _supersessions = [];
    private readonly List<SelectRow> _selects = [];
    private readonly List<JudgedPair> _pairs = [];
    private List<Finding> _findings = [];
    private readonly List<ServiceLimit> _limits = [];
    private readonly List<TorquePass> _torques = [];
    private readonly List<Opening> _openings = [];
    private readonly List<BenchOrder> _benchOrders = [];
    private readonly List<Reminder> _reminders = [];
    private readonly List<Renewal> _renewals = [];
    private readonly List<WeakPoint> _weakPoints = [];

    public static Unit Millimetre { get; } = UnitTable.Get("mm");

    public static Evidence Document { get; } = By(EvidenceGrade.MakersDocument);

    /// <summary>Evidence of a grade; its code is made of the grade, and of a mark where several sources of one grade are told apart.</summary>
    public static Evidence By(EvidenceGrade grade, string? mark = null, string? copyOf = null, bool retracted = false)
    {
        var code = $"ev-{Codes.Of(grade)}{(mark is null ? "" : $"-{mark}")}";
        return new Evidence(code, grade, "2026-02-14", "bench 2", "sheet 1", copyOf, retracted ? "2026-05-01" : null, retracted ? "read off the wrong part" : null) { Root = $"finch-9/{copyOf ?? code}" };
    }

    public static Evidence Retracted(EvidenceGrade grade = EvidenceGrade.MakersDocument) => By(grade, "retracted", retracted: true);

    /// <summary>A length that the maker allows to vary by as much either way.</summary>
    /// <param name="knownTo">How well it is known, mm.</param>
    public static QuantityReading Mm(decimal value, decimal spread = 0, decimal knownTo = 0) => Mm(value, spread, spread, knownTo);

    public static QuantityReading Mm(decimal value, decimal minus, decimal plus, decimal knownTo) => new(
        Metres(value), Metres(minus), Metres(plus), Metres(knownTo), Millimetre, $"{value.ToString(CultureInfo.InvariantCulture)} mm");

    /// <summary>A length of which the maker's spread is not recorded.</summary>
    public static QuantityReading Bare(decimal value) => Mm(value) with { Minus = null, Plus = null };

    public static CountReading Count(int value) => new(value, value.ToString(CultureInfo.InvariantCulture));

    public static ChoiceReading Word(string choice) => new(choice);

    public static ChoicesReading Words(params string[] choices) => new([.. choices.Order(StringComparer.Ordinal)]);

    public static RecordedValue Has(string feature, Reading reading) => Has(feature, reading, Document);

    public static RecordedValue Has(string feature, Reading reading, Evidence? evidence) => new(feature, reading, evidence);

    public static string Id(string number) => $"alder:{number}";

    /// <summary>Two variants and one kind of part, <c>wheel</c>, at a position of the same name.</summary>
    public static TestFamily WithWheels(Action<TestKind> wheel) => new TestFamily().Variant("lark").Variant("swift").Place("wheel", wheel);

    /// <summary>As above, with another kind, <c>shaft</c>, at a position of the same name.</summary>
    public static TestFamily WithWheelsAndShafts(Action<TestKind> wheel, Action<TestKind> shaft) => WithWheels(wheel).Place("shaft", shaft);

    public TestFamily Variant(string code, Span? span = null)
    {
        _variants.Add(new Variant(code, $"{code} engine", span ?? Span.Always, Document));
        return this;
    }

    /// <summary>A kind and a position of the same name.</summary>
    public TestFamily Place(string code, Action<TestKind> describe) => Kind(code, describe).Position(code, code);

    public TestFamily Kind(string code, Action<TestKind> describe)
    {
        var kind = new TestKind(code);
        describe(kind);
        _kinds.Add(kind.Build());
        return this;
    }

    public TestFamily Position(string code, string kind, string group = "works", string? role = null)
    {
        _positions.Add(new Position(code, Title(code), group, kind, role));
        return this;
    }

    /// <summary>How long until a position told before can be seen; 0 from outside.</summary>
    public TestFamily Access(string position, decimal minutes, string? how = null)
    {
        var index = _positions.FindIndex(one => one.Code == position);
        _positions[index] = _positions[index] with { AccessMinutes = minutes, Access = how };
        return this;
    }

    public TestFamily Part(string number, string kind, params RecordedValue[] values)
    {
        _parts.Add(new Part(Id(number), "alder", number, NumberKey.Of(number), kind, Title(kind), null, Document, values, []));
        return this;
    }

    public TestFamily Wheel(string number, params RecordedValue[] values) => Part(number, "wheel", values);

    public TestFamily Shaft(string number, params RecordedValue[] values) => Part(number, "shaft", values);

    public TestFamily Work(string code, params string[] cautions)
    {
        _works.Add(new Work(code, code.Replace('-', ' '), 60, 2, null, "machine shop", [], [], false, cautions));
        return this;
    }

    /// <summary>A work that changes something of what it is done on.</summary>
    /// <param name="changes">As <c>position.feature</c>.</param>
    public TestFamily WorkOn(string code, decimal? days, Money? price, params string[] changes)
    {
        _works.Add(new Work(code, code.Replace('-', ' '), null, days, price, "machine shop", [], changes, false, []));
        return this;
    }

    /// <summary>What the maker fitted; <c>none</c> for known to carry nothing.</summary>
    public TestFamily Fitted(string variant, string position, string number, Span? span = null, Evidence? evidence = null, int pieces = 1)
    {
        var none = number == PartMatch.Core.Catalogue.Part.None;
        _fitments.Add(new Fitment(variant, position, none ? null : Id(number), span ?? Span.Always, none ? 0 : pieces, evidence ?? Document));
        return this;
    }

    public TestFamily Need(string variant, string position, string feature, Effect effect, Relation relation, Reading demand, Evidence? evidence = null)
    {
        _needs.Add(new Need(variant, position, feature, effect, relation, demand, evidence ?? Document, null));
        return this;
    }

    /// <param name="left"><c>position.feature</c>.</param>
    /// <param name="min">Least right minus left, mm; null for open.</param>
    /// <param name="max">Most right minus left, mm; null for open.</param>
    public TestFamily Joint(
        string code, string left, string right, Relation relation = Relation.Band, decimal? min = null, decimal? max = null, Effect effect = Effect.Stops,
        string? work = null, Consequence consequence = Consequence.Damage, string[]? variants = null, Evidence? evidence = null)
    {
        _joints.Add(new Joint(
            code, At(left), relation, At(right), new Interval(Metres(min), Metres(max)), relation == Relation.Band ? Millimetre : null, effect, work, consequence,
            variants ?? [], evidence ?? Document));
        return this;
    }

    /// <param name="terms">As books write it: <c>+34.0|-wheel.width</c>.</param>
    public TestFamily Stack(
        string code, string terms, decimal? min = null, decimal? max = null, Effect effect = Effect.Stops, string? work = null,
        Consequence consequence = Consequence.Damage, string[]? variants = null, Evidence? evidence = null)
    {
        _stacks.Add(new Stack(
            code, [.. terms.Split('|').Select(Term)], new Interval(Metres(min), Metres(max)), Millimetre, effect, work, consequence, variants ?? [], evidence ?? Document));
        return this;
    }

    /// <summary>"When the part at … has …, the position … must hold a part with …".</summary>
    public TestFamily Companion(
        string code, string when, Reading has, string then, Reading must, Relation whenRelation = Relation.Same, Relation thenRelation = Relation.Same,
        string[]? variants = null, Evidence? evidence = null)
    {
        _companions.Add(new Companion(
            code, new Condition(At(when), whenRelation, has), new Condition(At(then), thenRelation, must), variants ?? [], evidence ?? Document, null));
        return this;
    }

    public TestFamily Replaced(
        string old, string by, SupersessionWay way = SupersessionWay.One, int quantity = 1, string[]? with = null, Span? span = null, string[]? variants = null,
        Evidence? evidence = null)
    {
        _supersessions.Add(new Supersession(Id(old), Id(by), way, quantity, [.. (with ?? []).Select(Id)], span ?? Span.Always, variants ?? [], evidence ?? Document, null));
        return this;
    }

    public TestFamily Judged(string one, string other, PairJudgement judgement, string? note = null)
    {
        _pairs.Add(new JudgedPair(Id(one), Id(other), judgement, Document, note));
        return this;
    }

    public TestFamily Chosen(string position, string measured, decimal from, decimal to, string number, Evidence? evidence = null)
    {
        _selects.Add(new SelectRow(position, At(measured), Metres(from), Metres(to), Millimetre, Id(number), evidence ?? Document));
        return this;
    }

    /// <summary>What a source found of a part on an engine.</summary>
    /// <param name="with">Neighbours as <c>position=number</c>, or <c>position=none</c>.</param>
    public TestFamily Found(string code, string number, FindingOutcome outcome, Evidence by, string on = "lark", string at = "wheel", Span? span = null, params string[] with)
    {
        var axis = outcome is FindingOutcome.Same or FindingOutcome.Differently ? Axis.Runs : Axis.Mounts;
        _findings.Add(new Finding(
            code, IdOrNone(number) ?? PartMatch.Core.Catalogue.Part.None, on, at, axis, outcome, span ?? Span.Always,
            with.Select(pair => pair.Split('=')).ToDictionary(pair => pair[0], pair => IdOrNone(pair[1])), by, null));
        return this;
    }

    /// <param name="min">In mm; null for open.</param>
    /// <param name="max">In mm; null for open.</param>
    /// <param name="part">The number it holds for; null for the whole kind.</param>
    public TestFamily Limit(
        string kind, string feature, decimal? min, decimal? max, Consequence consequence = Consequence.Damage, Evidence? evidence = null, string? part = null)
    {
        _limits.Add(new ServiceLimit(kind, feature, part is null ? null : Id(part), new Interval(Metres(min), Metres(max)), Millimetre, consequence, evidence ?? Document, null));
        return this;
    }

    /// <summary>The passes by which a source tightens what sits at a position, in their order: <c>30 N·m</c>, <c>90 deg</c>.</summary>
    /// <param name="plusMinus">Of every torque, in its unit.</param>
    public TestFamily Tightened(
        string variant, string position, Lubrication? lubrication, SingleUse? singleUse, string[] turns, Evidence? evidence = null, decimal? plusMinus = null,
        Span? span = null)
    {
        foreach (var (index, turn) in turns.Index())
        {
            var (number, unit) = (decimal.Parse(turn.Split(' ')[0], CultureInfo.InvariantCulture), UnitTable.Get(turn.Split(' ')[1]));
            var spread = unit.Dimension == Dimension.Torque && plusMinus is { } either ? unit.DifferenceToBase(either) : (decimal?)null;
            _torques.Add(new TorquePass(
                variant, position, index + 1, new QuantityReading(unit.ToBase(number), spread, spread, null, unit, turn), lubrication, null, singleUse,
                evidence ?? Document, null)
            { Span = span ?? Span.Always });
        }

        return this;
    }

    /// <summary>Before the first can come off, the others have to be off.</summary>
    public TestFamily OffFirst(string position, string first, Evidence? evidence = null, params string[] variants)
    {
        _openings.Add(new Opening(position, first, variants, evidence ?? Document, null));
        return this;
    }

    /// <summary>Where both go in, the first one first.</summary>
    public TestFamily GoesInFirst(string first, string then, BenchJoin? how = null, Evidence? evidence = null, params string[] variants)
    {
        _benchOrders.Add(new BenchOrder(first, then, how, variants, evidence ?? Document, null));
        return this;
    }

    public TestFamily Reminds(string kind, string code, ReminderAt at, string text, Evidence? evidence = null, params string[] works)
    {
        _reminders.Add(new Reminder(kind, code, at, works, text, evidence, null));
        return this;
    }

    /// <summary>A work of which it is told what has to be there, or done, before.</summary>
    public TestFamily WorkAfter(string code, decimal? days, string[] needsFirst, params string[] changes)
    {
        _works.Add(new Work(code, code.Replace('-', ' '), null, days, null, "machine shop", needsFirst, changes, false, []));
        return this;
    }

    /// <summary>When the first is disturbed, the second is renewed.</summary>
    /// <param name="amount">In mL; null for a piece.</param>
    public TestFamily Renewed(string opened, string renewed, decimal? cureHours = null, decimal? amount = null, Evidence? evidence = null, params string[] variants)
    {
        var millilitre = UnitTable.Get("mL");
        var reading = amount is { } much ? new QuantityReading(millilitre.ToBase(much), null, null, null, millilitre, FormattableString.Invariant($"{much} mL")) : null;
        _renewals.Add(new Renewal(opened, renewed, reading, amount is null ? null : "2 mm", cureHours, variants, evidence ?? Document, null));
        return this;
    }

    public TestFamily Weak(string code, string position, string? remedyPart, string? remedyWork = null, string on = "lark", Span? span = null, Evidence? evidence = null)
    {
        _weakPoints.Add(new WeakPoint(code, on, position, $"{Title(position)} is weak.", remedyPart is null ? null : Id(remedyPart), remedyWork, span ?? Span.Always, evidence ?? Document, null));
        return this;
    }

    /// <summary>The facts, their lists in the order told.</summary>
    public FamilyFacts Facts() => Facts(new InOrder());

    /// <summary>The facts, their lists in another order.</summary>
    public FamilyFacts Facts(IOrder order, IReadOnlyList<Kind>? kinds = null) => new(
        order.Of(_variants), order.Of(_positions), order.Of(kinds ?? _kinds), order.Of([.. _parts.Select(part => part with { Values = order.Of(part.Values) })]), order.Of(_works),
        order.Of(_fitments), order.Of(_joints), order.Of(_stacks))
    {
        Family = new Family("finch-9", "Finch 9", "alder", null),
        Needs = order.Of(_needs),
        Companions = order.Of(_companions),
        Supersessions = order.Of(_supersessions),
        Selects = order.Of(_selects),
        Pairs = order.Of(_pairs),
        Findings = order.Of(_findings),
        Limits = order.Of(_limits),
        Torques = order.Of(_torques),
        Openings = order.Of(_openings),
        BenchOrders = order.Of(_benchOrders),
        Reminders = order.Of(_reminders),
        Renewals = order.Of(_renewals),
        WeakPoints = order.Of(_weakPoints),
    };

    /// <summary>What look-alike questions about the family alone are decided from.</summary>
    public LookAlikeFacts LookAlikes(Odds? odds = null) => new(
        new LookAlikeIndex(_parts.Select(part => new PartNumber(part.Maker, part.Number, part.Key, NumberSort.Service, part.Id))), [Facts()], odds);

    /// <summary>The facts with one more feature of a kind, which has a rule and which nobody recorded of any part.</summary>
    public FamilyFacts Facts(string kind, Effect effect)
    {
        var more = new Feature("unrecorded", "unrecorded", FeatureType.Choice, null, []);
        var rule = new Rule(more.Code, effect, Relation.Same, 0, null, Consequence.Loss, null);
        return Facts(new InOrder(), [.. _kinds.Select(one => one.Code == kind ? one with { Features = [.. one.Features, more], Rules = [.. one.Rules, rule] } : one)]);
    }

    /// <summary>Does this part fit?</summary>
    /// <param name="number">A number of no part is asked as a number in no book.</param>
    /// <param name="with">Neighbours as <c>position=number</c>, or <c>position=none</c>.</param>
    public FitAnswer Ask(string number, string at = "wheel", string on = "lark", string? built = null, long? serial = null, params string[] with) =>
        FitCheck.Decide(Facts(), Question(number, at, on, built, serial, with));

    public FitAnswer AskFrom(string from, string at = "wheel", string on = "swift", string? builtFrom = null, string? built = null) =>
        FitCheck.DecideFrom(Facts(), from, Date(builtFrom), new FitQuestion(on, at, null, Built: Date(built)));

    public FitQuestion Question(string number, string at = "wheel", string on = "lark", string? built = null, long? serial = null, params string[] with)
    {
        var part = _parts.Find(part => part.Number == number);
        return new FitQuestion(
            on, at, part, number, null, Date(built), serial,
            with.Length == 0 ? null : with.Select(pair => pair.Split('=')).ToDictionary(pair => pair[0], pair => _parts.Find(part => part.Number == pair[1])));
    }

    public CompareAnswer Compare(params string[] variants) => VariantComparison.Decide(Facts(), new CompareQuestion(variants, null, Show.All, new Dictionary<string, BuildDate>()));

    public static Span Serials(long? from, long? to, string? mark = null) => new(null, null, from, to, mark);

    public static Span BuiltIn(string? from, string? to, string? mark = null) => new(Date(from), Date(to), null, null, mark);

    public static BuildDate? Date(string? text) => text is null ? null : BuildDate.Find(text);

    /// <summary>The same family with these findings instead of its own.</summary>
    public TestFamily WithFindings(IReadOnlyList<Finding> findings)
    {
        var copy = (TestFamily)MemberwiseClone();
        copy._findings = [.. findings];
        return copy;
    }

    public static decimal Metres(decimal mm) => mm / 1000;

    private static string? IdOrNone(string number) => number == PartMatch.Core.Catalogue.Part.None ? null : Id(number);

    private static decimal? Metres(decimal? mm) => mm / 1000;

    private static FeatureAt At(string text) => text.Split('.') is [var position, var feature] ? new FeatureAt(position, feature) : throw new FormatException($"'{text}' is not position.feature.");

    private static StackTerm Term(string text)
    {
        var sign = text[0] == '-' ? -1 : 1;
        return decimal.TryParse(text[1..], NumberStyles.Number, CultureInfo.InvariantCulture, out var constant)
            ? new ConstantTerm(sign, Metres(constant))
            : new FeatureTerm(sign, At(text[1..]));
    }

    internal static string Title(string code) => char.ToUpperInvariant(code[0]) + code[1..].Replace('-', ' ');
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;

namespace PartMatch.Core.Compression;

/// <summary>Fills in what the question leaves out: from the parts, then from the engine as built, else a refusal that asks for it.</summary>
internal sealed class CylinderReading
{
    private const string Given = "given in the question";

    private static readonly Spread _none = Spread.Exactly(0);

    // A squish land takes from nothing to about half of the bore. Common practice, no source.
    private static readonly Spread _openingOfBore = new(0.50, 0.75, 1.00);

    private readonly HashSet<int> _asked = [];
    private readonly List<SumInput> _inputs = [];
    private readonly List<Assumption> _assumed = [];
    private SumRefused? _refused;

    private CylinderReading()
    {
    }

    public static (CylinderInputs? Inputs, SumRefused? Refused) Read(FamilyFacts facts, CompressionQuestion question)
    {
        var reading = new CylinderReading();
        var inputs = reading.Fill(facts, question);
        return reading._refused is { } refused ? (null, refused) : (inputs, null);
    }

    /// <summary>The part the question names, else what the maker fitted in that role.</summary>
    public static IReadOnlyList<Part> PartsOf(FamilyFacts facts, CompressionQuestion question, string role, Part? chosen) =>
        chosen is null ? RoleParts.Fitted(facts, question.Variant, RoleParts.FindPosition(facts, role), question.On) : [chosen];

    private CylinderInputs Fill(FamilyFacts facts, CompressionQuestion question)
    {
        IReadOnlyList<Part> Parts(string role, Part? chosen) => PartsOf(facts, question, role, chosen);
        var (head, gasket, piston) = (Parts(Roles.Head, question.Head), Parts(Roles.HeadGasket, question.HeadGasket), Parts(Roles.Piston, question.Piston));
        var engine = EngineGeometry.Read(facts, question.Variant);

        var bore = Take("bore", LookedUp.Typed(question.Bore) ?? engine.Bore, Lengths, "85 mm");
        var stroke = Take("stroke", LookedUp.Typed(question.Stroke) ?? engine.Stroke, Lengths, "94 mm");
        var chamber = Take("chamber-volume", LookedUp.Typed(question.ChamberVolume) ?? LookedUp.Feature(head, "chamber-volume"), GeometryText.RangeInCm3,
            "41 cm3");
        var bowl = Take("bowl-volume", LookedUp.Typed(question.BowlVolume) ?? LookedUp.Feature(piston, "bowl-volume"), GeometryText.RangeInCm3, "9.6 cm3");
        var thickness = Take("gasket-thickness", LookedUp.Typed(question.GasketThickness) ?? LookedUp.Feature(gasket, "compressed-thickness"), Lengths,
            "0.75 mm");
        var hole = Take("gasket-bore", LookedUp.Typed(question.GasketBore) ?? OnlyTheHole(question, LookedUp.Feature(gasket, "bore")), Lengths, "86 mm");
        var rod = Find("rod-length", LookedUp.Typed(question.RodLength) ?? engine.Rod, Lengths);
        var deck = Deck(question, engine, piston, stroke, rod);
        var headSkim = Typed("head-skim", question.HeadSkim);
        var blockSkim = Typed("block-skim", question.BlockSkim);
        var opening = Opening(question, bore);
        int? land = question.LandDepth is { } depth ? Add("land-depth", new Figure(Spread.Of(depth), Given), Lengths) : null;
        var closes = Closing(facts, question);

        Cylinder Build(double[] of) => new(
            of[bore], of[stroke], rod is { } length ? of[length] : double.NaN, of[chamber], of[bowl], of[thickness], of[hole], deck(of), of[headSkim],
            of[blockSkim], opening(of), land is { } below ? of[below] : 0);
        return new CylinderInputs(_assumed, _inputs, _asked, Build, closes);
    }

    /// <summary>A gasket of which the thickness is typed is another one than is recorded: its hole is still taken from that one.</summary>
    private static LookedUp OnlyTheHole(CompressionQuestion question, LookedUp hole) => question.GasketThickness is null || hole.Figure is not { } figure ? hole
        : hole with
        {
            Figure = figure with { Source = $"{figure.Source}, of which only the hole is taken: the thickness is given; give gasket-bore= as well" },
        };

    /// <summary>Measured, else open between a wide squish land and none.</summary>
    private Func<double[], double> Opening(CompressionQuestion question, int bore)
    {
        static QuantityRange Areas(Spread squareMetres) => squareMetres.In(GeometryText.SquareCentimetres, "0.0");
        if (question.ChamberArea is { } area)
        {
            var at = Add("chamber-area", new Figure(Spread.Of(area), Given), Areas);
            return of => of[at];
        }

        if (question.HeadSkim is { High: > 0 } || question.WantedRatio is not null)
        {
            _assumed.Add(new Assumption("chamber-area", Areas(_openingOfBore * ClearanceVolume.Area(_inputs[bore].Spread.Expected)),
                "not known: from half of the bore, a wide squish land, to all of it, no land (common practice, no source); measure it and give chamber-area="));
        }

        var share = _inputs.Count;
        _inputs.Add(new SumInput("opening of the chamber", _openingOfBore));
        _asked.Add(share);
        return of => of[share] * ClearanceVolume.Area(of[bore]);
    }

    /// <summary>Measured, else the four lengths, else what is recorded of the engine with its own pistons.</summary>
    private Func<double[], double> Deck(CompressionQuestion question, EngineGeometry engine, IReadOnlyList<Part> piston, int stroke, int? rod)
    {
        if (LookedUp.Typed(question.DeckClearance)?.Figure is { } measured)
        {
            var at = Add("deck-clearance", measured, Lengths);
            return of => of[at];
        }

        var height = LookedUp.Typed(question.DeckHeight) ?? engine.DeckHeight;
        var crown = LookedUp.Typed(question.CompressionHeight) ?? LookedUp.Feature(piston, "compression-height");
        if (rod is { } length && height.Figure is { } face && crown.Figure is { } edge)
        {
            var (top, up) = (Add("deck-height", face, Lengths), Add("compression-height", edge, Lengths));
            return of => of[top] - (of[stroke] / 2) - of[length] - of[up];
        }

        var lacking = crown.Figure is null ? crown : height.Figure is null ? height : engine.Rod;
        var recorded = question.Piston is null && engine.DeckClearance.Figure is not null ? engine.DeckClearance : lacking with { Figure = null };
        var found = Take("deck-clearance", recorded, Lengths, "0.2 mm");
        return of => of[found];
    }

    private Spread? Closing(FamilyFacts facts, CompressionQuestion question)
    {
        var camshafts = PartsOf(facts, question, Roles.IntakeCamshaft, question.IntakeCamshaft);
        if ((LookedUp.Typed(question.IntakeCloses) ?? AsBuiltEvents.Closes(camshafts, Valve.Intake)).Figure is not { } closing)
        {
            return null;
        }

        var advance = question.IntakeAdvance is { } shift ? Spread.Of(shift) : _none;
        var closes = closing.Spread - advance;
        var setting = advance == _none ? "at rest" : TimingText.Advance(advance).Text;
        _assumed.Add(new Assumption("intake-closes", TimingText.IntakeCloses(closes), $"{closing.Source}, {setting}"));
        return closes;
    }

    private static QuantityRange Lengths(Spread metres) => GeometryText.RangeInMm(metres);

    private int Typed(string name, QuantityRange? typed) =>
        typed is null ? Silent(name) : Add(name, new Figure(Spread.Of(typed), Given), Lengths);

    private int Silent(string name)
    {
        _inputs.Add(new SumInput(Words(name), _none));
        return _inputs.Count - 1;
    }

    private int? Find(string name, LookedUp found, Func<Spread, QuantityRange> show) => found.Figure is { } figure ? Add(name, figure, show) : null;

    private int Take(string name, LookedUp found, Func<Spread, QuantityRange> show, string example)
    {
        _refused ??= found.Figure is null
            ? new SumRefused("not-recorded", name, $"The compression is built up from its volumes; the {Words(name)} is not known.", found.Found,
                "a quantity with its unit", $"measure it and give it: {name}={example}")
            : null;
        return found.Figure is { } figure ? Add(name, figure, show) : Silent(name);
    }

    private int Add(string name, Figure figure, Func<Spread, QuantityRange> show)
    {
        _assumed.Add(new Assumption(name, show(figure.Spread), figure.Source));
        _inputs.Add(new SumInput(Words(name), figure.Spread));
        if (figure.Source == Given)
        {
            _asked.Add(_inputs.Count - 1);
        }

        return _inputs.Count - 1;
    }

    private static string Words(string name) => name.Replace('-', ' ');
}

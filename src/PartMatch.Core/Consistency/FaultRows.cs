using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>The rows of a family's book that a fault names. A part, and what is said of it, is taken to stand in the family's own book.</summary>
internal sealed class FaultRows(FamilyFacts facts)
{
    public FaultRow Of(Supersession link)
    {
        var way = link.Way == SupersessionWay.Both ? "both ways" : "one way";
        return Row("supersessions", $"{link.OldPart} is replaced by {link.NewPart}, {way}", link.Evidence, link.OldPart, link.NewPart);
    }

    public FaultRow Of(Joint joint) => Row("joints", joint.Code, joint.Evidence, joint.Code);

    public FaultRow Of(Stack stack) => Row("stacks", stack.Code, stack.Evidence, stack.Code);

    public FaultRow Of(Companion rule) => Row("companions", rule.Code, rule.Evidence, rule.Code);

    public FaultRow Of(Need need)
    {
        var feature = FaultWords.FeatureName(facts, need.Position, need.Feature);
        var text = $"{need.Variant} needs at {FaultWords.PlaceName(facts, need.Position)}: {feature} {FaultWords.Condition(need.Relation, need.Demand)}";
        return Row("needs", text, need.Evidence, need.Variant, need.Position, need.Feature, Codes.Of(need.Effect));
    }

    public FaultRow Of(Fitment fitment)
    {
        var text = $"{fitment.Variant}, {FaultWords.PlaceName(facts, fitment.Position)}: {fitment.Part ?? "nothing"}{FaultWords.Limits(fitment.Span)}";
        return Row(
            "fitments", text, fitment.Evidence, fitment.Variant, fitment.Position, fitment.Part ?? Part.None,
            fitment.Span.BuiltFrom?.Text ?? "", fitment.Span.BuiltTo?.Text ?? "",
            FaultWords.Number(fitment.Span.SerialFrom), FaultWords.Number(fitment.Span.SerialTo));
    }

    public FaultRow Of(Finding finding)
    {
        var found = $"{Codes.Of(finding.Axis)} {FitWording.InWords(Codes.Of(finding.Outcome))}{FaultWords.Limits(finding.Span)}";
        return Row("findings", $"{finding.Part} on {finding.Variant}: {found}", finding.Evidence, finding.Code);
    }

    public FaultRow Of(TorquePass pass)
    {
        var text = $"{pass.Variant}, {FaultWords.PlaceName(facts, pass.Position)}, pass {pass.Pass}: {pass.Turn.Text}{FaultWords.Limits(pass.Span)}";
        return Row(
            "torques", text, pass.Evidence, pass.Variant, pass.Position, pass.Evidence.Code, FaultWords.Number(pass.Pass),
            pass.Span.BuiltFrom?.Text ?? "", pass.Span.BuiltTo?.Text ?? "", FaultWords.Number(pass.Span.SerialFrom), FaultWords.Number(pass.Span.SerialTo));
    }

    public FaultRow Of(Part part) => Row("parts", $"{part.Id}, {part.Name}", part.Evidence, part.Id);

    public FaultRow Of(Position position) => new(facts.Family.Code, "positions", Key(position.Code), position.Name);

    public FaultRow Of(JudgedPair pair) => Row(
        "pairs", $"{pair.PartA} and {pair.PartB}: {Codes.Of(pair.Judgement)}", pair.Evidence, pair.PartA, pair.PartB);

    /// <summary>A kind may stand in any book that the family uses.</summary>
    public static FaultRow Of(Kind kind) => new(null, "kinds", Key(kind.Code), kind.Name);

    public FaultRow Of(Part part, RecordedValue value)
    {
        var text = $"{part.Id}, {FaultWords.FeatureName(facts.FindKind(part.Kind), value.Feature)}: {value.Reading.Text}";
        return Row("values", text, value.Evidence, part.Id, value.Feature, value.Evidence?.Code ?? "");
    }

    /// <summary>Every row that counts of one feature of a part.</summary>
    public IEnumerable<FaultRow> Of(Part part, string feature) =>
        part.Values.Where(value => value.Feature == feature && value.Evidence?.IsRetracted != true).Select(value => Of(part, value));

    /// <summary>What the maker fitted at that position of a variant, where it is that part.</summary>
    public IEnumerable<FaultRow> Fitting(string variant, string position, string part) =>
        facts.FitmentsAt(variant, position).Where(fitment => fitment.Part == part).Select(Of);

    private FaultRow Row(string table, string text, Evidence? evidence, params IReadOnlyList<string> key) =>
        new(facts.Family.Code, table, Key(key), text, FaultWords.Source(evidence));

    private static string Key(params IReadOnlyList<string> cells) =>
        string.Join(',', cells.Select(cell => cell.Replace("%", "%25", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal)));
}

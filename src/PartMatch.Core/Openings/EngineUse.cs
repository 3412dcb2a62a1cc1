using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Openings;

/// <summary>
/// Cautions that are of one use only: shown where the engine has that use, or where nobody recorded which it has. The use of a variant is the choice "use"
/// of what is declared among its services.
/// </summary>
internal static class EngineUse
{
    private const string Use = "use";

    private const string Generator = "generator";

    private static readonly Dictionary<string, string> _onlyIn = new(StringComparer.Ordinal)
    {
        ["high-voltage"] = Generator,
        ["ignition-protection"] = "marine",
        ["magnet-rotor"] = Generator,
    };

    /// <summary>Those codes that may concern one of these engines; and high voltage where one is known to be of a generator set.</summary>
    public static IEnumerable<string> Cautions(FamilyFacts facts, IReadOnlyCollection<string> variants, IEnumerable<string> codes)
    {
        var uses = variants.Select(variant => Of(facts, variant)).ToList();
        return codes.Where(code => !_onlyIn.TryGetValue(code, out var use) || uses.Exists(of => of.Count == 0 || of.Contains(use)))
            .Concat(uses.Exists(of => of.Contains(Generator)) ? ["high-voltage"] : []);
    }

    /// <summary>Empty where it is not recorded.</summary>
    private static List<string> Of(FamilyFacts facts, string variant) =>
    [
        .. facts.Positions.Where(position => position.Group == BuildTerms.Services).SelectMany(position => facts.FitmentsAt(variant, position.Code))
            .Select(fitment => fitment.Part).OfType<string>().Select(facts.FindPart).OfType<Part>()
            .SelectMany(part => part.Values).Where(value => value.Feature == Use && value.Evidence?.IsRetracted != true)
            .Select(value => value.Reading).OfType<ChoiceReading>().Select(reading => reading.Choice),
    ];
}

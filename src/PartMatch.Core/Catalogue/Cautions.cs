using System.Collections.Frozen;

namespace PartMatch.Core.Catalogue;

/// <summary>A caution as an answer shows it.</summary>
public sealed record Caution(string Code, string Text);

/// <summary>The cautions of the trade, by code. They warn; they never say that anything is safe.</summary>
/// <remarks>Common practice, no source.</remarks>
public static class Cautions
{
    private static readonly FrozenDictionary<string, string> _texts = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["alcohol-fuel"] = "Ethanol and methanol attack seals, hoses, coatings and some metals made for petrol, take up water, and burn with a flame that is hard to see; methanol is poisonous also through the skin. Use parts recorded for the fuel.",
        ["interference-engine"] = "Valves and pistons can meet on this engine. Measure piston-to-valve by hand, at both ends of phaser travel, with the final gasket, springs and lash, before the starter turns it.",
        ["fuel-pressure"] = "Fuel under pressure. Relieve it, keep sparks and hot surfaces away, use line and seals made for the fuel, and follow local fire codes.",
        ["residual-rail-pressure"] = "The rail holds pressure after the pump stops. Relieve it and cover the joint before opening it.",
        ["high-voltage"] = "A generator or hybrid donor can hold lethal voltage after it is switched off. Isolation and proof of dead are work for licensed people.",
        ["magnet-rotor"] = "A magnet rotor pulls hard and suddenly and upsets medical implants. Draw it with its own tool, away from steel.",
        ["compressed-springs"] = "Compressed springs leave with force. Use a proper compressor, wear eye protection, stand out of line.",
        ["tightening"] = "Tighten to the maker's document for this fastener, thread and lubrication; numbers from another variant do not carry over.",
        ["oiled-threads"] = "A torque given for dry threads overloads an oiled one.",
        ["wet-blind-holes"] = "Oil or water in a blind hole can crack the casting when the bolt goes in. Blow it dry, with eye protection.",
        ["single-use-bolts"] = "Single-use bolts are renewed every time they are undone.",
        ["ignition-protection"] = "In a boat, electrical parts in the engine space must be ignition-protected to the rules that hold there.",
        ["cleaner-vapour"] = "Some cleaners give poisonous vapour when heated or welded. Ventilate, and let parts dry fully.",
        ["lifting"] = "Lift with rated gear and nobody under the load; a bare block is not balanced where the eyes are.",
        ["hot-parts"] = "Exhaust parts and coolant stay hot enough to scald long after shut-down.",
        ["emissions-law"] = "Changing fuel, exhaust or control parts can make an engine unlawful on the road or water. Ask what the local law allows before buying.",
        ["donor-in-the-yard"] = "A scrapped vehicle or generator set can hold fuel, battery charge and pressure, and can slip off what it stands on. Ask the yard to make it safe to work at, keep sparks away, leave orange cables and a traction battery alone, and keep to the yard's rules.",
        ["sodium-filled"] = "Sodium-filled valves must never be cut, ground through or thrown in the scrap: sodium burns in contact with water.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static bool IsKnown(string code) => _texts.ContainsKey(code);

    /// <summary>All codes, ordered.</summary>
    public static IReadOnlyList<string> All { get; } = [.. _texts.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The cautions of those codes, each once, ordered by code.</summary>
    public static IReadOnlyList<Caution> Of(IEnumerable<string> codes) =>
        [.. codes.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Where(_texts.ContainsKey).Select(code => new Caution(code, _texts[code]))];
}

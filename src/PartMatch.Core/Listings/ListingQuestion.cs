using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Listings;

/// <summary>What the listing is held against.</summary>
/// <param name="Place">Null where no engine was named: then the answer says only what each number is.</param>
/// <param name="Level">How much of an assembly is needed; null where it plays no part.</param>
public sealed record ListingQuestion(NeededPlace? Place, AssemblyLevel? Level);

/// <summary>The place a part is needed for.</summary>
/// <param name="Family">Holds the variant and the position.</param>
public sealed record NeededPlace(FamilyFacts Family, string Variant, string Position, BuildDate? Built = null, long? Serial = null)
{
    /// <summary>In words: "Coolant pump of Tern 16 TS".</summary>
    public string Name => $"{Family.FindPosition(Position)?.Name ?? Position} of {Family.FindVariant(Variant)?.Name ?? Variant}";
}

/// <summary>What a listing is judged from. Immutable; kept until the base changes.</summary>
/// <param name="Contents">What kits and assemblies hold, by set.</param>
public sealed record ListingFacts(LookAlikeFacts LookAlikes, ILookup<string, ContentsRow> Contents);

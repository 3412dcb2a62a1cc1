using PartMatch.Core.Catalogue;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>For how many of the injectors of a cylinder is there a recorded place?</summary>
/// <param name="Recorded">As built; the fit of an injector is judged for such a place.</param>
/// <param name="Wanted">As asked, both stages together.</param>
internal readonly record struct InjectorPlaces(int Recorded, int Wanted)
{
    public bool AreEnough => Wanted <= Recorded;

    public string OnlyFor => FormattableString.Invariant($"{Recorded} of the {Wanted} injectors of a cylinder");

    public SumWarning Warning => new("more-injectors-than-places", FormattableString.Invariant(
        $"{Wanted} injectors for each cylinder are asked for; this variant has {Recorded}. ")
        + "Whether an injector fits is judged for a recorded place only. Each one more wants a seat in manifold or head, a rail, a driver that can switch it "
        + "and a harness: nothing is recorded of them.");

    public static InjectorPlaces Of(InjectorsAsked asked, FamilyFacts facts) => new(
        InjectorEngine.Read(facts.EngineFacts, asked.Variant).InjectorsPerCylinder ?? 1, asked.InjectorsPerCylinder * (asked.StagedWith is null ? 1 : 2));
}

using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.ValveTiming;

/// <summary>Does a camshaft go on the wheel that drives it? Asked of the joints between the two, as a fit answer does.</summary>
internal static class CamOnWheel
{
    /// <returns>Why it does not; null where it does, nobody knows, or both are as the maker fitted them.</returns>
    public static string? FindFault(
        FamilyFacts facts, string variant, Position? place, IReadOnlyList<Part> camshafts, Position? wheelPlace, IReadOnlyList<Part> wheels)
    {
        if (place is null || wheelPlace is null || camshafts is not [var camshaft] || wheels is not [var wheel]
            || (Sits(facts, variant, place, camshaft) && Sits(facts, variant, wheelPlace, wheel)))
        {
            return null;
        }

        var joints = facts.JointsAt(place.Code).Where(joint => joint.Left.Position == wheelPlace.Code || joint.Right.Position == wheelPlace.Code)
            .Select(joint => joint.Code).ToHashSet();
        var with = new Dictionary<string, Part?>(StringComparer.Ordinal) { [wheelPlace.Code] = wheel };
        var against = FitCheck.Decide(facts, new FitQuestion(variant, place.Code, camshaft, With: with)).Reasons.FirstOrDefault(reason =>
            reason is { By: ReasonBy.Joint, Axis: Axis.Mounts, Met: Met.No } && joints.Contains(reason.Code ?? ""));
        return against is null ? null : $"{camshaft.Id} does not go on {wheel.Id}. {against.Text}";
    }

    private static bool Sits(FamilyFacts facts, string variant, Position place, Part part) =>
        facts.FitmentsAt(variant, place.Code).Any(fitment => fitment.Part == part.Id);
}

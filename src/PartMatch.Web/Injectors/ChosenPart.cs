using PartMatch.Core.Catalogue;
using PartMatch.Storage.Parts;
using PartMatch.Web.Http;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Injectors;

/// <summary>A part that a sum is asked with by its number.</summary>
internal static class ChosenPart
{
    /// <summary>The part, or why there is none; neither where nothing was asked.</summary>
    /// <param name="field">The query parameter.</param>
    /// <param name="kind">What kind of part it has to be; null where the family has no place for it.</param>
    public static (Part? Part, Refused? Refused) Find(string? written, string field, string? kind, PartStore parts)
    {
        if (written is null)
        {
            return (null, null);
        }

        var named = NamedPart.Find(written, null, parts);
        if (named.IsAmbiguous)
        {
            return (null, new Refused(named.ToProblem(field)));
        }

        return named.Part is { } part && part.Kind == kind
            ? (part, null)
            : (null, new Refused(Problem.Of("bad-question", new FieldError(
                field, named.Part is { } other ? $"{other.Id}: {other.Kind}" : written,
                    $"the number of a known part of kind {kind ?? "(this family has no such position)"}", "look it up at /api/parts"))));
    }
}

using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>Will it fit? The one reasoning behind every fit answer, compare cell and look-alike danger.</summary>
public static class FitCheck
{
    public static FitAnswer Decide(FamilyFacts facts, FitQuestion question) => throw new NotImplementedException();
}

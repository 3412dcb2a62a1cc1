using FluentValidation;
using PartMatch.Storage.Editing;
using PartMatch.Web.Http;

namespace PartMatch.Web.Editing;

/// <summary>Who changes something, and why: said freely, kept for ever, so kept short.</summary>
internal static class NoteRules
{
    private const int LongestName = 80;
    private const int LongestReason = 500;

    public static IRuleBuilderOptions<T, string?> MustBeName<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(name => IsLine(name, LongestName)).Otherwise($"a name of at most {LongestName} characters in one line", "leave it out to stay unnamed");

    public static IRuleBuilderOptions<T, string?> MustBeReason<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(reason => IsLine(reason, LongestReason)).Otherwise($"a reason of at most {LongestReason} characters in one line", "leave it out to give none");

    /// <summary>The note of a request; what is blank was not said.</summary>
    public static ChangeNote Note(string? who, string? why) => new(Said(who), Said(why));

    private static string? Said(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static bool IsLine(string? text, int longest) => text is null || (text.Trim().Length <= longest && !text.Any(char.IsControl));
}

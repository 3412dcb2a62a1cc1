using System.Globalization;
using FluentValidation;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Http;

/// <summary>Rules that several features' requests share.</summary>
internal static class CommonRules
{
    private const int DefaultPage = LookAlikeQuestion.DefaultLimit;

    private const int LargestPage = LookAlikeQuestion.MaxLimit;

    public static IRuleBuilderOptions<T, string?> MustBePageSize<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(limit => limit is null || (FindWhole(limit) is { } size && size is >= 1 and <= LargestPage))
        .Otherwise($"a whole number from 1 to {LargestPage}", $"leave limit out for {DefaultPage}");

    public static IRuleBuilderOptions<T, string?> MustBeNumber<T>(this IRuleBuilder<T, string?> rule) => rule
        .Must(written => IsNumber(written ?? ""))
        .Otherwise($"a part number of 1 to {NumberKey.MaxLength} letters and digits besides separators, or maker:number", "for example P-26-1147-C");

    public static IRuleBuilderOptions<T, string?> MustBeGiven<T>(this IRuleBuilder<T, string?> rule, string expected, string mend) => rule
        .Must(text => !string.IsNullOrWhiteSpace(text)).Otherwise(expected, mend);

    /// <summary>Has it a key that a part could have? A maker in front of it does not count.</summary>
    public static bool IsNumber(string written) => NumberKey.Of(NamedPart.Split(written).Number).Length is > 0 and <= NumberKey.MaxLength;

    public static int PageSize(string? limit) => limit is null ? DefaultPage : FindWhole(limit) is { } size ? (int)size : DefaultPage;

    /// <summary>A whole number of digits only, or null.</summary>
    public static long? FindWhole(string? text) =>
        long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) ? whole : null;
}

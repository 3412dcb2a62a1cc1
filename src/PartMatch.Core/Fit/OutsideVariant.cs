using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>Is the engine asked about one that this variant cannot be? Then its date or number was misread, or it is another variant.</summary>
internal static class OutsideVariant
{
    /// <summary>Moves no axis; empty where the engine falls inside, or where neither it nor the variant's span is known.</summary>
    public static IEnumerable<Reason> Reasons(Variant variant, FitQuestion question)
    {
        string[] outside =
        [
            .. question.Built is { } built && !FitCheck.Overlaps(variant.Span, built)
                ? new[] { $"built {built.Text}, but this variant was built {Range(variant.Span.BuiltFrom?.Text, variant.Span.BuiltTo?.Text)}" } : [],
            .. question.Serial is { } serial && (serial < variant.Span.SerialFrom || serial > variant.Span.SerialTo)
                ? new[] { FormattableString.Invariant($"serial number {serial}, but this variant has {Range(Text(variant.Span.SerialFrom), Text(variant.Span.SerialTo))}") } : [],
        ];
        if (outside.Length > 0)
        {
            yield return new Reason(
                "outside-variant", ReasonBy.Identity, Axis.Mounts, Met.NotKnown,
                $"The engine asked about is outside what is recorded of {variant.Name}: {string.Join("; ", outside)}. "
                + "Read it again, or it is another variant and this answer is not about it.")
            {
                Code = "outside-variant",
                Grade = variant.Evidence?.Grade,
                Cited = variant.Evidence is { } evidence ? [evidence] : [],
            };
        }
    }

    private static string? Text(long? serial) => serial is { } number ? FormattableString.Invariant($"{number}") : null;

    private static string Range(string? from, string? to) => (from, to) switch
    {
        (null, _) => $"up to {to}",
        (_, null) => $"from {from}",
        _ => $"{from} to {to}",
    };
}

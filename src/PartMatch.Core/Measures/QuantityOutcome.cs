namespace PartMatch.Core.Measures;

/// <summary>The outcome of reading a quantity: <see cref="QuantityRead"/> or <see cref="QuantityRefused"/>.</summary>
public abstract record QuantityOutcome;

/// <summary>The text was understood.</summary>
public sealed record QuantityRead(Quantity Quantity, Unit Unit) : QuantityOutcome;

/// <summary>The text was not understood, or could mean two things: found, expected and how to mend it.</summary>
/// <param name="Code"><c>quantity-needs-unit</c>, <c>quantity-unreadable</c>, <c>quantity-wrong-unit</c> or <c>quantity-decimal-comma</c>.</param>
/// <param name="Found">The text, cut short where it is very long.</param>
public sealed record QuantityRefused(string Code, string Title, string Found, string Expected, string Mend) : QuantityOutcome;

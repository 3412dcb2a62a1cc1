using System.Globalization;

namespace PartMatch.Core.Measures;

/// <summary>Money in sums: a whole number of the currency's minor unit.</summary>
/// <param name="Minor">Pence, cents, or whole yen. Wider than 64 bits, because a price times pieces must never wrap.</param>
/// <param name="Currency">ISO 4217.</param>
public readonly record struct Amount(Int128 Minor, string Currency)
{
    public static Amount operator +(Amount left, Amount right) => left.Currency == right.Currency
        ? left with { Minor = left.Minor + right.Minor }
        : throw new ArgumentException($"{left.Currency} and {right.Currency} cannot be added without a rate.", nameof(right));

    /// <summary>
    /// The amount of a decimal text, or null when the code is no currency, or the text is no plain number or has more decimals than the currency.
    /// </summary>
    public static Amount? Find(string text, string currency)
    {
        if (Currencies.FindDigits(currency) is not { } digits || QuantityParser.FindNumber(text) is not { } number
            || (text.Split('.') is [_, var decimals] && decimals.Length > digits) || Math.Abs(number) >= decimal.MaxValue / Scale(digits))
        {
            return null;
        }

        return new Amount((Int128)(number * Scale(digits)), currency);
    }

    /// <exception cref="ArgumentException">It is no amount of its currency.</exception>
    public static Amount Of(Money money) =>
        Find(money.Amount, money.Currency) ?? throw new ArgumentException($"'{money.Amount}' is no amount of {money.Currency}.", nameof(money));

    public static Amount Add(Amount left, Amount right) => left + right;

    public Amount Times(int times) => this with { Minor = Minor * times };

    /// <summary>One of so many equal parts, rounded half to even.</summary>
    public Amount DividedBy(int parts) => this with { Minor = HalfEven((decimal)Minor / parts) };

    /// <summary>A share in percent, rounded half to even.</summary>
    public Amount Percent(decimal percent) => this with { Minor = HalfEven((decimal)Minor * percent / 100) };

    public Money ToMoney()
    {
        var digits = Currencies.FindDigits(Currency) ?? 0;
        return new Money(((decimal)Minor / Scale(digits)).ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture),
            Currency);
    }

    public override string ToString() => $"{ToMoney().Amount} {Currency}";

    private static Int128 HalfEven(decimal minor) => (Int128)Math.Round(minor, MidpointRounding.ToEven);

    private static decimal Scale(int digits) => digits switch
    {
        0 => 1,
        2 => 100,
        3 => 1000,
        _ => 10_000,
    };
}

using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Identification;

/// <summary>When, and with what, the candidates are to be told apart.</summary>
/// <param name="Tools">Tools at hand; they count in hand only.</param>
/// <param name="Seen">What was seen already, each as an answer of a key writes it: <c>vane-curve@photo:right</c>.</param>
public sealed record TellApartTerms(CheckMode Mode, IReadOnlyList<Method> Tools, IReadOnlyList<string> Seen)
{
    /// <summary>Checks that need a tool. The others take a look.</summary>
    public static IReadOnlyList<Method> AllTools { get; } = [Method.SteelRule, Method.Caliper, Method.Gauge, Method.Scale, Method.Meter, Method.Bench];

    /// <summary>Can the check be made? Before paying, only what a photo or a label shows of an engine as it stands.</summary>
    internal bool Allow(Observable observable) => Mode == CheckMode.BeforePaying
        ? observable is { WorksBeforePaying: true, Position: null or { AccessMinutes: 0 } }
        : !AllTools.Contains(observable.Check.Method) || Tools.Contains(observable.Check.Method);
}

/// <summary>The outcome of asking how to tell candidates apart: <see cref="TellApartDecided"/> or <see cref="SeenRefused"/>.</summary>
public abstract record TellApartOutcome;

public sealed record TellApartDecided(TellApartAnswer Answer) : TellApartOutcome;

/// <summary>Something that was seen cannot be understood.</summary>
public sealed record SeenRefused(string Found, string Expected, string Mend) : TellApartOutcome;

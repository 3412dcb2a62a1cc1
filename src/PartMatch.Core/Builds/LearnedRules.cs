using System.Globalization;

namespace PartMatch.Core.Builds;

/// <summary>What the fit of lines was found to ask, of every plan of builds that ask the same of their lines. Several may learn at once.</summary>
internal sealed class LearnedRules
{
    private readonly Dictionary<string, LineRule> _rules;
    private readonly Dictionary<string, LineRisk> _risks = new(StringComparer.Ordinal);
    private readonly Lock _lock = new();

    public LearnedRules(IEnumerable<LineRule> first) => _rules = first.DistinctBy(rule => rule.Key).ToDictionary(rule => rule.Key, StringComparer.Ordinal);

    /// <summary>Did a plan hold with its ties already? Then the next one most likely does at once.</summary>
    public bool IsSettled { get; set; }

    /// <summary>How much is known: it only grows.</summary>
    public int Count
    {
        get
        {
            lock (_lock)
            {
                return _rules.Count + _risks.Count;
            }
        }
    }

    /// <summary>In ordinal order, so that the order in which they were learned changes nothing.</summary>
    public IReadOnlyList<LineRule> Rules
    {
        get
        {
            lock (_lock)
            {
                return [.. _rules.OrderBy(rule => rule.Key, StringComparer.Ordinal).Select(rule => rule.Value)];
            }
        }
    }

    /// <summary>In ordinal order.</summary>
    public IReadOnlyList<LineRisk> Risks
    {
        get
        {
            lock (_lock)
            {
                return [.. _risks.OrderBy(risk => risk.Key, StringComparer.Ordinal).Select(risk => risk.Value)];
            }
        }
    }

    /// <summary>Whether it was not known yet.</summary>
    public bool Add(LineRule rule)
    {
        lock (_lock)
        {
            return _rules.TryAdd(rule.Key, rule);
        }
    }

    /// <returns>The one that is kept of it: another where it was known already.</returns>
    /// <param name="position">Of the line that weighs so.</param>
    public LineRisk Keep(string position, LineRisk risk)
    {
        lock (_lock)
        {
            var key = $"{position}:{string.Join('&', risk.If)}";
            return _risks.TryGetValue(key, out var known) ? known : _risks[key] = risk;
        }
    }

    /// <summary>Everything of a build that the fit of its lines hangs on: not its money and not its days.</summary>
    /// <param name="candidates">What could be at each position: a way out that can be had now may not have been there before.</param>
    public static string KeyOf(BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates)
    {
        var donor = terms.Build.Donor;
        var positions = terms.Facts.Family.Positions.Select(position => terms.At(position.Code)).Select(at => string.Create(
            CultureInfo.InvariantCulture, $"{string.Join(',', at.Like)}/{string.Join(',', at.Parts)}/{at.State?.Item}"));
        var could = candidates.Select(choices => string.Join(',', choices.Select(choice => choice.Key)));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{string.Join(';', could)}#{terms.Target}/{donor.Variant}/{donor.Built}/{donor.Serial}/{terms.Build.Goal}/"
                + $"{string.Join(',', terms.Build.Works.Select(work => work.Work))}/{string.Join(';', positions)}");
    }
}

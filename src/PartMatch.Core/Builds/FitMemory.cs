using System.Collections.Concurrent;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Builds;

/// <summary>Fit answers that were already given of one state of a family: many plans ask the same lines. It can be forgotten at any time.</summary>
public sealed class FitMemory
{
    private readonly ConcurrentDictionary<string, FitAnswer> _answers = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<(string Variant, string Position), IReadOnlyList<string>> _reach = new();
    private readonly ConcurrentDictionary<string, LearnedRules> _learned = new(StringComparer.Ordinal);

    /// <summary>What was planned from these facts.</summary>
    internal PlanMemory Plans { get; } = new();

    /// <summary>Builds whose rules are remembered; beyond that all are learned anew.</summary>
    private const int MostBuilds = 64;

    /// <summary>What is already known of plans of builds that ask the same of the lines, whatever they may cost.</summary>
    /// <param name="first">What is known before any plan was tried.</param>
    internal LearnedRules Learned(BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates, Func<IEnumerable<LineRule>> first)
    {
        if (_learned.Count >= MostBuilds)
        {
            _learned.Clear();
        }

        return _learned.GetOrAdd(LearnedRules.KeyOf(terms, candidates), _ => new LearnedRules(first()));
    }

    /// <summary>Every position that can matter to an answer at this one, itself included, ordered.</summary>
    internal IReadOnlyList<string> Reach(FamilyFacts facts, string variant, string position) => _reach.GetOrAdd(
        (variant, position), _ => [.. Neighbours.Reach(facts, variant, position).Order(StringComparer.Ordinal)]);

    /// <param name="engine">What else the answer hangs on, besides the parts.</param>
    internal FitAnswer Ask(FamilyFacts facts, FitQuestion question, string engine, IReadOnlySet<string> works)
    {
        var with = (question.With ?? new Dictionary<string, Part?>()).OrderBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => $"{pair.Key}={pair.Value?.Id}");
        var beside = (question.Beside ?? new Dictionary<string, OneOfThese>()).OrderBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => $"{pair.Key}={string.Join('|', pair.Value.Parts.Select(part => part.Id))}");
        var key = $"{question.Variant}/{question.Position}/{question.Part?.Id}/{question.Item?.Address}/{engine}"
            + $"?{string.Join('&', with)}&{string.Join('&', beside)}"
            + $"!{string.Join('|', works.Order(StringComparer.Ordinal))}";
        return _answers.GetOrAdd(key, _ => FitCheck.Decide(facts, question));
    }
}

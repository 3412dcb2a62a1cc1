using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Variants;

/// <summary>Compares variants of a family position by position, with the same reasoning that answers every fit question.</summary>
public static class VariantComparison
{
    /// <summary>Most variants compared at once.</summary>
    public const int Most = 6;

    // Every comparison of the same variants asks the same hundreds of fit questions. Only those without build dates, of which there are few, are kept.
    private static readonly ConditionalWeakTable<FamilyFacts, ConcurrentDictionary<(string Position, string From, string To), AcrossPair>> _judged = [];

    /// <summary>Decides one comparison.</summary>
    /// <exception cref="ArgumentException">A variant is not of this family.</exception>
    public static CompareAnswer Decide(FamilyFacts facts, CompareQuestion question)
    {
        if (question.Variants.FirstOrDefault(code => facts.FindVariant(code) is null) is { } unknown)
        {
            throw new ArgumentException($"{unknown} is not a variant of {facts.Family.Code}.", nameof(question));
        }

        ComparedPosition[] all =
        [
            .. facts.Positions.Where(position => question.Group is null || position.Group == question.Group).AsParallel().AsOrdered().Select(position => Compare(facts, question, position)),
        ];
        return new CompareAnswer(question.AsAsked(facts.Family.Code), Count(all), [.. all.Where(position => IsShown(position, question.Show))]);
    }

    private static bool IsShown(ComparedPosition position, Show show) => show switch
    {
        Show.Differences => position.Status != PositionStatus.Shared,
        Show.Stoppers => IsStopper(position),
        _ => true,
    };

    private static bool IsStopper(ComparedPosition position) => position.Across.Any(pair => pair.Headline == Headline.DoesNotFit);

    private static CompareCounts Count(ComparedPosition[] all) => new(
        all.Count(position => position.Status == PositionStatus.Shared),
        all.Count(position => position.Status == PositionStatus.Differs),
        all.Count(position => position.Status == PositionStatus.OnlyOnSome),
        all.Count(position => position.Status == PositionStatus.NotKnown),
        all.Count(IsStopper));

    private static ComparedPosition Compare(FamilyFacts facts, CompareQuestion question, Position position)
    {
        VariantFitted[] fitted = [.. question.Variants.Select(variant => FittedOn(facts, question, variant, position.Code))];
        return new ComparedPosition(
            position.Code, position.Name, position.Group, StatusOf(facts, fitted), fitted,
            FeatureDifferences.Between(facts, position, fitted),
            [
                .. question.Variants.SelectMany(_ => question.Variants, (from, to) => (from, to)).Where(pair => pair.from != pair.to)
                    .Select(pair => Across(facts, question, position.Code, pair.from, pair.to)),
            ]);
    }

    private static VariantFitted FittedOn(FamilyFacts facts, CompareQuestion question, string variant, string position)
    {
        var built = question.Built.GetValueOrDefault(variant);
        Fitment[] fitments =
        [
            .. facts.FitmentsAt(variant, position).Where(fitment => built is null || FitCheck.Overlaps(fitment.Span, built)),
        ];
        FittedPart[] parts =
        [
            .. fitments.Where(fitment => fitment.Part is not null)
                .Select(fitment => FittedPart.Of(fitment, facts.GetPart(fitment.Part!))), // filtered just above
        ];
        var state = (fitments.Length, parts.Length) switch
        {
            (0, _) => FittedState.NotRecorded,
            (_, 0) => FittedState.None,
            _ => FittedState.Fitted,
        };
        return new VariantFitted(variant, state, parts);
    }

    private static PositionStatus StatusOf(FamilyFacts facts, VariantFitted[] fitted)
    {
        if (fitted.Any(one => one.State == FittedState.NotRecorded))
        {
            return PositionStatus.NotKnown;
        }

        var carrying = fitted.Count(one => one.State == FittedState.Fitted);
        if (carrying != 0 && carrying != fitted.Length)
        {
            return PositionStatus.OnlyOnSome;
        }

        return fitted.Skip(1).All(other => SameParts(facts, fitted[0], other)) ? PositionStatus.Shared : PositionStatus.Differs;
    }

    /// <summary>Every part of one side is, or is linked both ways with, a part of the other, and the other way round.</summary>
    private static bool SameParts(FamilyFacts facts, VariantFitted left, VariantFitted right) =>
        left.Parts.All(part => right.Parts.Any(other => IdentityCheck.SameBothWays(facts, (left.Variant, part.Part), (right.Variant, other.Part))))
        && right.Parts.All(part => left.Parts.Any(other => IdentityCheck.SameBothWays(facts, (left.Variant, other.Part), (right.Variant, part.Part))));

    private static AcrossPair Across(FamilyFacts facts, CompareQuestion question, string position, string from, string to) =>
        question.Built.ContainsKey(from) || question.Built.ContainsKey(to)
            ? Judge(facts, question, position, from, to)
            : _judged.GetOrCreateValue(facts).GetOrAdd((position, from, to), key => Judge(facts, question, key.Position, key.From, key.To));

    private static AcrossPair Judge(FamilyFacts facts, CompareQuestion question, string position, string from, string to)
    {
        var built = question.Built.GetValueOrDefault(to);
        var answer = FitCheck.DecideFrom(facts, from, question.Built.GetValueOrDefault(from), new FitQuestion(to, position, Part: null, Built: built));
        var link = $"/api/fit?family={facts.Family.Code}&variant={to}&position={position}&from={from}{(built is null ? "" : $"&built={built.Text}")}";
        return new AcrossPair(from, to, answer.Mounts.Value, answer.Runs.Value, answer.Headline, answer.Sureness, link);
    }
}

namespace PartMatch.Core.Identification;

/// <summary>A test that can be made on the thing to be identified.</summary>
/// <param name="Cost">Minutes; any unit that is the same for all tests of a key. Not negative.</param>
/// <param name="Answers">
/// One set of candidates for each answer that the test can give: those that it cannot tell from one another. Bit i stands for candidate i. A candidate
/// whose value is not recorded, or lies between two others, is in several.
/// </param>
internal sealed record KeyTest(double Cost, IReadOnlyList<ulong> Answers)
{
    /// <summary>The answers among some candidates that are left: none of them wholly part of another. One only: the test splits nothing.</summary>
    public IReadOnlyList<ulong> AnswersAmong(ulong candidates)
    {
        var left = new List<ulong>(Answers.Count);
        foreach (var answer in Answers)
        {
            var here = answer & candidates;
            if (here == 0 || left.Exists(other => (here & ~other) == 0))
            {
                continue;
            }

            left.RemoveAll(other => (other & ~here) == 0);
            left.Add(here);
        }

        return left;
    }

    /// <summary>Would the test show which of the two it is?</summary>
    public bool Separates(int one, int other)
    {
        var both = (1UL << one) | (1UL << other);
        return AnswersAmong(both).Count > 1;
    }
}

/// <summary>A place in a key: which candidates are left, and what to do next.</summary>
/// <param name="Test">Index of the test to make; null at the end, where one candidate is left or no test splits those that are.</param>
/// <param name="Branches">One for each answer of the test.</param>
/// <param name="ExpectedCost">Of everything from here on, by the weights of the candidates left.</param>
/// <param name="WorstCost">Of the dearest way from here to an end.</param>
internal sealed record KeyNode(ulong Candidates, int? Test, IReadOnlyList<KeyBranch> Branches, double ExpectedCost, double WorstCost);

/// <param name="Share">How likely this answer is, 0 to 1.</param>
internal sealed record KeyBranch(double Share, KeyNode Next);

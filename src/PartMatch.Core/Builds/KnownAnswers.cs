namespace PartMatch.Core.Builds;

/// <summary>Which sets of wishes and facts were found to hold together: giving up more never breaks what held, holding more never mends what did not.</summary>
internal sealed class KnownAnswers
{
    private readonly List<IReadOnlySet<int>> _enough = [];
    private readonly List<IReadOnlySet<int>> _tooFew = [];

    /// <param name="dropped">Grounds that are given up.</param>
    /// <param name="ask">
    /// Asked where nothing that is known answers, null: not found out; with those of the grounds that what was found does without: it answers for fewer too.
    /// </param>
    public bool? CanHold(IReadOnlySet<int> dropped, Func<IReadOnlySet<int>, (bool? CanHold, IReadOnlySet<int> Broken)> ask)
    {
        if (_enough.Exists(enough => enough.IsSubsetOf(dropped)))
        {
            return true;
        }

        if (_tooFew.Exists(dropped.IsSubsetOf))
        {
            return false;
        }

        var (answer, broken) = ask(dropped);
        if (answer is { } known)
        {
            (known ? _enough : _tooFew).Add(known ? broken : dropped);
        }

        return answer;
    }
}

using System.Collections;

namespace PartMatch.Core.Sums;

/// <summary>The sums of one part, written out only when somebody reads them: of a whole catalogue few are read.</summary>
internal sealed class WorkingLater(Func<IReadOnlyList<WorkingStep>> write) : IReadOnlyList<WorkingStep>
{
    private readonly Lazy<IReadOnlyList<WorkingStep>> _steps = new(write);

    public int Count => _steps.Value.Count;

    public WorkingStep this[int index] => _steps.Value[index];

    public IEnumerator<WorkingStep> GetEnumerator() => _steps.Value.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

namespace PartMatch.Core.Tests.Catalogue;

/// <summary>The order in which the rows of a table are handed over.</summary>
internal interface IOrder
{
    IReadOnlyList<T> Of<T>(IReadOnlyList<T> rows);
}

internal sealed class InOrder : IOrder
{
    public IReadOnlyList<T> Of<T>(IReadOnlyList<T> rows) => [.. rows];
}

/// <summary>The same shuffle for the same number.</summary>
internal sealed class Shuffled(int seed) : IOrder
{
    public IReadOnlyList<T> Of<T>(IReadOnlyList<T> rows)
    {
        T[] shuffled = [.. rows];
        new Random(seed).Shuffle(shuffled);
        return shuffled;
    }
}

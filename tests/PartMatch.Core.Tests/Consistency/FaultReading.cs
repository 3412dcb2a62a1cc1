using PartMatch.Core.Consistency;
using PartMatch.Core.Tests.Catalogue;
using Xunit;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>What tests ask of a family, and look for in the faults.</summary>
internal static class FaultReading
{
    public static ConsistencyAnswer Look(this TestFamily family, string? variant = null, FaultSort? sort = null, int limit = ConsistencyQuestion.DefaultLimit) =>
        ConsistencyCheck.Decide(family.Facts(), new ConsistencyQuestion(variant, sort, limit));

    public static IReadOnlyList<Fault> Faults(this TestFamily family, FaultSort sort) => family.Look(sort: sort).Faults;

    public static Fault Only(this TestFamily family, FaultSort sort) => Assert.Single(family.Faults(sort));

    /// <summary>Table and key of every row that a fault names.</summary>
    public static IEnumerable<string> Keys(this Fault fault) => fault.Rows.Select(row => $"{row.Table} {row.Key}");

    public static (int Alone, int Together) Counted(this Fault fault) => (fault.Unlocks?.Alone ?? -1, fault.Unlocks?.Together ?? -1);

    /// <summary>The missing value of a feature of a part.</summary>
    public static Fault Missing(this TestFamily family, string number, string feature) =>
        Assert.Single(family.Faults(FaultSort.MissingValue), fault => fault.Measure?.Part == TestFamily.Id(number) && fault.Measure.Feature == feature);
}

/// <summary>The same family with every row of one table changed, for what no method of the family tells.</summary>
internal sealed class Changed<TRow>(Func<TRow, TRow> change) : IOrder
{
    public IReadOnlyList<T> Of<T>(IReadOnlyList<T> rows) => rows is IReadOnlyList<TRow> own ? (IReadOnlyList<T>)(object)own.Select(change).ToList() : [.. rows];
}

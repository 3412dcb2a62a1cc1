using System.Globalization;

namespace PartMatch.Storage.Tests;

/// <summary>Always the same time.</summary>
internal sealed class StoppedClock(string time) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => DateTimeOffset.Parse(time, CultureInfo.InvariantCulture);
}

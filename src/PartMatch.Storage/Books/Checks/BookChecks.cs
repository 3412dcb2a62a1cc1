using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>All checks of rows against each other and against the books in use.</summary>
internal static class BookChecks
{
    public static void Run(BookScope scope, ErrorList errors, CancellationToken cancellation)
    {
        var head = scope.Own.Head;
        if (scope.Own.IsFamily && !head.Has("maker"))
        {
            errors.Add(head, "maker", "empty, but a family book says who made the engine: expected a maker of makers.csv");
        }

        Action<BookScope, ErrorList>[] checks =
        [
            UniquenessChecks.RunInScope, ReferenceChecks.Run, KindChecks.Run, WorkChecks.Run, EvidenceChecks.Run,
            PartChecks.Run, LookAlikeChecks.Run, FamilyChecks.Run, JointChecks.Run, CompanionChecks.Run,
            FindingChecks.Run, TorqueChecks.Run, OpeningChecks.Run, SourceChecks.Run, ItemChecks.Run, SellerChecks.Run, OfferChecks.Run,
        ];
        foreach (var check in checks)
        {
            cancellation.ThrowIfCancellationRequested();
            check(scope, errors);
        }
    }
}

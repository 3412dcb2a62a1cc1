using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>All checks of rows against each other and against the books in use.</summary>
internal static class BookChecks
{
    public static void Run(BookScope scope, ErrorList errors, ImportWatch watch)
    {
        var head = scope.Own.Head;
        if (scope.Own.IsFamily && !head.Has("maker"))
        {
            errors.Add(head, "maker", "empty, but a family book says who made the engine: expected a maker of makers.csv");
        }

        watch.Begin(ImportStage.CheckingReferences, scope.Own.Count);
        Action<BookScope, ErrorList>[] checks =
        [
            UniquenessChecks.RunInScope, References, KindChecks.Run, WorkChecks.Run, EvidenceChecks.Run,
            Parts, LookAlikeChecks.Run, FamilyChecks.Run, JointChecks.Run, CompanionChecks.Run,
            FindingChecks.Run, TorqueChecks.Run, OpeningChecks.Run, SourceChecks.Run, ItemChecks.Run, SellerChecks.Run, OfferChecks.Run,
        ];
        foreach (var check in checks)
        {
            watch.Look();
            check(scope, errors);
        }

        void References(BookScope scope, ErrorList errors) => ReferenceChecks.Run(scope, errors, watch);

        void Parts(BookScope scope, ErrorList errors)
        {
            watch.Begin(ImportStage.CheckingMeaning, scope.Own.Count);
            PartChecks.Run(scope, errors, watch);
        }
    }
}

using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Books.Format;

/// <summary>Every file of a parts book, format 1, column by column. Reading, writing and the SQL follow this list.</summary>
internal static class BookTables
{
    public const string Format = "1";

    public static BookTable Books { get; } = new("book.csv", "books", "book", familyOnly: false,
        [Must("format", Cells.Text), Must("book", Cells.Code), Must("kind", Cells.OneOf<BookKind>()), Must("title", Cells.Text),
            May("maker", Cells.Code, Refers.Maker), May("uses", Cells.CodeList), May("licence", Cells.Text), May("note", Cells.Text)]);

    public static BookTable Makers { get; } = Any("makers", "maker", Must("maker", Cells.Code), Must("name", Cells.Text));

    public static BookTable Variants { get; } = Family("variants", "variant",
        [Must("variant", Cells.Code), Must("name", Cells.Text), .. Span(), Evidence()]);

    public static BookTable Engine { get; } = Family("engine", "variant,property",
        [Must("variant", Cells.Code, Refers.Variant), Must("property", Cells.Code), .. Value(), Evidence()]);

    public static BookTable Kinds { get; } = Any("kinds", "kind",
        Must("kind", Cells.Code), Must("name", Cells.Text), Must("running", Cells.OneOf(["can-alter", "cannot-alter"])),
        Must("reviewed", Cells.YesNo), May("cautions", Cells.CautionList));

    public static BookTable Features { get; } = Any("features", "kind,feature",
        Must("kind", Cells.Code, Refers.Kind), Must("feature", Cells.Code), Must("name", Cells.Text), Must("type", Cells.OneOf<FeatureType>()),
        May("unit", Cells.Unit), May("choices", Cells.WordList));

    public static BookTable Rules { get; } = Any("rules", "kind,feature,effect",
        Must("kind", Cells.Code, Refers.Kind), Must("feature", Cells.Code), Must("effect", Cells.OneOf<Effect>()), Must("relation", Relation()),
        May("allowance", Cells.NotNegative), May("unit", Cells.Unit), May("work", Cells.Code, Refers.Work),
        Must("consequence", Cells.OneOf<Consequence>()), May("note", Cells.Text));

    public static BookTable Works { get; } = Any("works", "work",
        Must("work", Cells.Code), Must("name", Cells.Text), May("minutes", Cells.NotNegative), May("days", Cells.NotNegative),
        May("price", Cells.NotNegative),
        May("currency", Cells.Currency), May("who", Cells.Text), May("needs_first", Cells.CodeList), May("changes", Cells.WordList),
        May("undo", Cells.YesNo),
        May("cautions", Cells.CautionList));

    public static BookTable Checks { get; } = Any("checks", "kind,feature,method",
        Must("kind", Cells.Code, Refers.Kind), Must("feature", Cells.Code), Must("method", Cells.OneOf<Method>()), Must("minutes", Cells.NotNegative),
        May("uncertainty", Cells.NotNegative), May("unit", Cells.Unit), May("how", Cells.Text));

    public static BookTable Shots { get; } = Any("shots", "kind,shot",
        Must("kind", Cells.Code, Refers.Kind), Must("shot", Cells.Code), Must("name", Cells.Text), May("shows", Cells.CodeList), May("how", Cells.Text));

    public static BookTable Positions { get; } = Family("positions", "position",
        [Must("position", Cells.Code), Must("name", Cells.Text), Must("group", Cells.Code), Must("kind", Cells.Code, Refers.Kind),
            May("role", Cells.OneOf(Roles.All))]);

    public static BookTable Access { get; } = Family("access", "position",
        [Must("position", Cells.Code, Refers.Position), Must("minutes", Cells.NotNegative), May("how", Cells.Text)]);

    public static BookTable Parts { get; } = Any("parts", "part",
        Must("part", Cells.Part), Must("kind", Cells.Code, Refers.Kind), Must("name", Cells.Text), May("note", Cells.Text), Evidence());

    public static BookTable Numbers { get; } = Any("numbers", "number,part",
        Must("number", Cells.Part), Must("sort", Cells.OneOf<NumberSort>()), Must("part", Cells.Part, Refers.Part), May("note", Cells.Text));

    public static BookTable Values { get; } = Any("values", "part,feature,evidence",
        [Must("part", Cells.Part, Refers.Part), Must("feature", Cells.Code), .. Value(), Evidence()]);

    public static BookTable Curves { get; } = Any("curves", "part,curve,x,y,evidence",
        Must("part", Cells.Part, Refers.Part), Must("curve", Cells.Code), Must("x", Cells.Number), Must("x_unit", Cells.Unit),
        May("y", Cells.Number), May("y_unit", Cells.Unit),
        Must("value", Cells.Number), Must("unit", Cells.Unit), Evidence());

    public static BookTable Fitments { get; } = Family("fitments", "variant,position,part,built_from,built_to,serial_from,serial_to",
        [Must("variant", Cells.Code, Refers.Variant), Must("position", Cells.Code, Refers.Position),
            Must("part", Cells.PartOrNone, Refers.Part), .. Span(),
            May("mark", Cells.Text), May("quantity", Cells.Whole), Evidence()]);

    public static BookTable Needs { get; } = Family("needs", "variant,position,feature,effect",
        [Must("variant", Cells.Code, Refers.Variant), Must("position", Cells.Code, Refers.Position), Must("feature", Cells.Code),
            Must("effect", Cells.OneOf<Effect>()),
            Must("relation", Relation()), .. Value(), Evidence(), May("note", Cells.Text)]);

    public static BookTable Joints { get; } = Family("joints", "joint",
        [Must("joint", Cells.Code), Must("left_position", Cells.Code, Refers.Position), Must("left_feature", Cells.Code),
            Must("relation", Cells.OneOf(["band", "same", "one-of", "covers"])),
            Must("right_position", Cells.Code, Refers.Position), Must("right_feature", Cells.Code), May("min", Cells.Number),
            May("max", Cells.Number), May("unit", Cells.Unit),
            .. Outcome(), OfVariants(), Evidence()]);

    public static BookTable Stacks { get; } = Family("stacks", "stack",
        [Must("stack", Cells.Code), Must("terms", Cells.Terms), May("min", Cells.Number), May("max", Cells.Number), Must("unit", Cells.Unit),
            .. Outcome(), OfVariants(), Evidence()]);

    public static BookTable Selects { get; } = Family("selects", "position,from,part",
        [Must("position", Cells.Code, Refers.Position), Must("measure_position", Cells.Code, Refers.Position),
            Must("measure_feature", Cells.Code), Must("from", Cells.Number),
            Must("to", Cells.Number), Must("unit", Cells.Unit), Must("part", Cells.Part, Refers.Part), Evidence()]);

    public static BookTable Companions { get; } = Family("companions", "companion",
        [Must("companion", Cells.Code), .. Condition("when"), .. Condition("then"), OfVariants(), Evidence(), May("note", Cells.Text)]);

    public static BookTable Supersessions { get; } = Any("supersessions", "old_part,new_part",
        [Must("old_part", Cells.Part, Refers.Part), Must("new_part", Cells.Part, Refers.Part), Must("way", Cells.OneOf<SupersessionWay>()),
            Must("quantity", Cells.Whole),
            May("with", Cells.PartList, Refers.Part), .. Span(), OfVariants(), Evidence(), May("note", Cells.Text)]);

    public static BookTable Contents { get; } = Any("contents", "set,part",
        Must("set", Cells.Part, Refers.Part), Must("part", Cells.Part, Refers.Part), May("quantity", Cells.Whole),
        May("certain", Cells.OneOf(["no", "possible", "yes"])), May("note", Cells.Text));

    public static BookTable Pairs { get; } = Any("pairs", "part_a,part_b",
        Must("part_a", Cells.Part, Refers.Part), Must("part_b", Cells.Part, Refers.Part), Must("judgement", Cells.OneOf<PairJudgement>()), Evidence(),
        May("note", Cells.Text));

    public static BookTable Findings { get; } = Family("findings", "finding",
        [Must("finding", Cells.Code), Must("part", Cells.PartOrNone, Refers.Part), Must("variant", Cells.Code, Refers.Variant),
            Must("position", Cells.Code, Refers.Position), Must("axis", Cells.OneOf<Axis>()), Must("outcome", Cells.OneOf<FindingOutcome>()), .. Span(),
            May("with", Cells.Neighbours), Must("evidence", Cells.Code, Refers.Evidence), May("note", Cells.Text)]);

    public static BookTable Torques { get; } = Family("torques", "variant,position,evidence,pass,built_from,built_to,serial_from,serial_to",
        [Must("variant", Cells.Code, Refers.Variant), Must("position", Cells.Code, Refers.Position), Must("pass", Cells.Pass),
            .. Span().Select(column => column with { CameLater = true }),
            Must("value", Cells.NotNegative), May("minus", Cells.NotNegative), May("plus", Cells.NotNegative), Must("unit", Cells.Unit),
            May("lubrication", Cells.OneOf<Lubrication>()), May("sequence", Cells.Text), May("single_use", Cells.OneOf<SingleUse>()),
            Must("evidence", Cells.Code, Refers.Evidence), May("note", Cells.Text)]);

    public static BookTable Openings { get; } = Family("openings", "position,off_first,variants",
        [Must("position", Cells.Code, Refers.Position), Must("off_first", Cells.Code, Refers.Position), OfVariants(), Evidence(), May("note", Cells.Text)]);

    public static BookTable BenchOrder { get; } = new("bench-order.csv", "bench_order", "first,then,variants", familyOnly: true,
        [Must("first", Cells.Code, Refers.Position), Must("then", Cells.Code, Refers.Position), May("how", Cells.OneOf<BenchJoin>()), OfVariants(), Evidence(),
            May("note", Cells.Text)]);

    public static BookTable Reminders { get; } = Any("reminders", "kind,reminder",
        Must("kind", Cells.Code, Refers.Kind), Must("reminder", Cells.Code), Must("at", Cells.OneOf<ReminderAt>()), May("works", Cells.CodeList, Refers.Work),
        Must("text", Cells.Text), Evidence(), May("note", Cells.Text));

    public static BookTable Renewals { get; } = Family("renewals", "opened,renewed,variants",
        [Must("opened", Cells.Code, Refers.Position), Must("renewed", Cells.Code, Refers.Position), May("amount", Cells.NotNegative), May("unit", Cells.Unit),
            May("bead", Cells.Text), May("cure_hours", Cells.NotNegative), OfVariants(), Evidence(), May("note", Cells.Text)]);

    public static BookTable WeakPoints { get; } = new("weak-points.csv", "weak_points", "weak_point", familyOnly: true,
        [Must("weak_point", Cells.Code), Must("variant", Cells.Code, Refers.Variant), Must("position", Cells.Code, Refers.Position), Must("what", Cells.Text),
            May("remedy_part", Cells.Part, Refers.Part), May("remedy_work", Cells.Code, Refers.Work), .. Span(), Evidence(), May("note", Cells.Text)]);

    public static BookTable Sources { get; } = Any("sources", "evidence",
        Must("evidence", Cells.Code, Refers.Evidence), May("speaks_of", Cells.OneOf<SpeaksOf>()), May("instrument", Cells.Text), May("hours", Cells.NotNegative),
        May("output", Cells.NotNegative), May("output_unit", Cells.Unit), May("fuel", Cells.Text), May("page", Cells.Text), May("note", Cells.Text));

    public static BookTable Items { get; } = Family("items", "item",
        [Must("item", Cells.Code), Must("part", Cells.Part, Refers.Part), May("origin", Cells.OneOf<ItemOrigin>()), May("condition", Cells.Text), Evidence(),
            May("note", Cells.Text)]);

    public static BookTable Readings { get; } = Family("readings", "item,feature",
        [Must("item", Cells.Code, Refers.Item), Must("feature", Cells.Code), Must("value", Cells.Text), May("unit", Cells.Unit),
            May("uncertainty", Cells.NotNegative), May("instrument", Cells.Text), May("read_on", Cells.Date), Evidence(), May("note", Cells.Text)]);

    public static BookTable WorksDone { get; } = new("works-done.csv", "works_done", "item,work", familyOnly: true,
        [Must("item", Cells.Code, Refers.Item), Must("work", Cells.Code, Refers.Work), May("done_on", Cells.Date), May("note", Cells.Text)]);

    public static BookTable Limits { get; } = Any("limits", "kind,feature,part",
        Must("kind", Cells.Code, Refers.Kind), Must("feature", Cells.Code), Later("part", Cells.Part, Refers.Part),
        May("min", Cells.Number), May("max", Cells.Number), May("unit", Cells.Unit),
        Must("consequence", Cells.OneOf<Consequence>()), Evidence(), May("note", Cells.Text));

    public static BookTable Photos { get; } = Any("photos", "photo",
        Must("photo", Cells.Code), Must("image", Cells.Image), Evidence(), May("item", Cells.Code, Refers.Item), May("caption", Cells.Text));

    public static BookTable Sellers { get; } = Any("sellers", "seller",
        Must("seller", Cells.Code), Must("name", Cells.Text), May("country", Cells.Country), May("currency", Cells.Currency),
        May("shipping_fixed", Cells.NotNegative), May("shipping_per_item", Cells.NotNegative), May("free_from", Cells.NotNegative),
        May("import_charge", Cells.NotNegative), May("days_min", Cells.Whole), May("days_max", Cells.Whole), May("returns_days", Cells.Whole),
        May("restocking", Cells.NotNegative), May("note", Cells.Text));

    public static BookTable Offers { get; } = Any("offers", "offer",
        Must("offer", Cells.Code), Must("seller", Cells.Code, Refers.Seller), May("part", Cells.Part, Refers.Part), May("number_as_written", Cells.Text),
        Must("price", Cells.NotNegative), Must("currency", Cells.Currency), May("pack", Cells.Whole), May("stock", Cells.Whole),
        May("condition", Cells.OneOf(OfferWords.Conditions)), May("level", Cells.OneOf(OfferWords.Levels)), May("core_deposit", Cells.NotNegative),
        Must("seen_on", Cells.Day), May("days_min", Cells.Whole), May("days_max", Cells.Whole), May("shipping", Cells.NotNegative), May("note", Cells.Text),
        Later("core_part", Cells.Text), Later("returns_days", Cells.Whole), Later("restocking", Cells.NotNegative),
        Later("freight_back", Cells.OneOf(OfferWords.FreightBack)), Later("returnable", Cells.YesNo), Later("listing", Cells.Digest, Refers.Listing));

    public static BookTable Listings { get; } = Any("listings", "listing",
        Must("listing", Cells.Digest), Must("seen_on", Cells.Day), May("title", Cells.Text), May("address", Cells.Text), Must("text", Cells.Text));

    public static BookTable EvidenceRows { get; } = Any("evidence", "evidence",
        Must("evidence", Cells.Code), Must("grade", Cells.OneOf<EvidenceGrade>()), May("date", Cells.Date), May("author", Cells.Text),
        May("source", Cells.Text),
        May("derived_from", Cells.Code, Refers.Evidence), May("retracted_on", Cells.Date), May("retracted_why", Cells.Text));

    /// <summary>All of them, in ordinal order of the files.</summary>
    public static IReadOnlyList<BookTable> All { get; } =
    [
        .. new[]
        {
            Books, Makers, Variants, Engine, Kinds, Features, Rules, Works, Checks, Shots, Positions, Access, Parts, Numbers, Values, Curves, Fitments, Needs,
            Joints, Stacks, Selects, Companions, Supersessions, Contents, Pairs, EvidenceRows, Findings, Sources, Items, Readings, WorksDone, Limits, Photos,
            Sellers, Torques, Openings, BenchOrder, Renewals, WeakPoints, Reminders, Offers, Listings,
        }.OrderBy(table => table.File, StringComparer.Ordinal),
    ];

    /// <summary>The files whose rows the rows of other books can refer to, or rest on.</summary>
    public static IReadOnlyList<BookTable> Referable { get; } = [Books, Makers, Kinds, Features, Rules, Works, Checks, Shots, Parts, EvidenceRows, Sources,
        Limits, Sellers];

    /// <summary>The table of that name, which is the file's without its ending; null when there is none.</summary>
    public static BookTable? Find(string name) => All.FirstOrDefault(table => table.Stem == name);

    private static BookTable Any(string name, string key, params IReadOnlyList<BookColumn> columns) => new(name + ".csv", name, key, familyOnly: false, columns);

    private static BookTable Family(string name, string key, IReadOnlyList<BookColumn> columns) => new(name + ".csv", name, key, familyOnly: true, columns);

    private static BookColumn Must(string name, CellRule rule, Refers refers = Refers.Nothing) => new(name, rule, true, refers);

    private static BookColumn May(string name, CellRule rule, Refers refers = Refers.Nothing) => new(name, rule, false, refers);

    private static BookColumn Later(string name, CellRule rule, Refers refers = Refers.Nothing) => May(name, rule, refers) with { CameLater = true };

    private static BookColumn Evidence() => May("evidence", Cells.Code, Refers.Evidence);

    private static BookColumn OfVariants() => May("variants", Cells.CodeList, Refers.Variant);

    private static CellRule Relation() => Cells.OneOf(["same", "at-least", "at-most", "one-of", "covers"]);

    private static BookColumn[] Span() =>
        [May("built_from", Cells.Date), May("built_to", Cells.Date), May("serial_from", Cells.Whole), May("serial_to", Cells.Whole)];

    private static BookColumn[] Value() =>
        [Must("value", Cells.Text), May("minus", Cells.NotNegative), May("plus", Cells.NotNegative), May("unit", Cells.Unit),
            May("uncertainty", Cells.NotNegative)];

    private static BookColumn[] Outcome() =>
        [Must("effect", Cells.OneOf<Effect>()), May("work", Cells.Code, Refers.Work), Must("consequence", Cells.OneOf<Consequence>())];

    private static BookColumn[] Condition(string side) =>
    [
        Must(side + "_position", Cells.Code, Refers.Position), Must(side + "_feature", Cells.Code), Must(side + "_relation", Relation()),
        Must(side + "_value", Cells.Text),
        May(side + "_unit", Cells.Unit),
    ];
}

using System.Collections.Frozen;

namespace PartMatch.Web.Http;

/// <summary>A sort of problem, explained at <c>/problems/{code}</c>.</summary>
internal sealed record ProblemType(string Code, int Status, string Title, string Explanation);

/// <summary>Every sort of problem an answer can be.</summary>
internal static class ProblemTypes
{
    /// <summary>All sorts, by status, then code.</summary>
    public static IReadOnlyList<ProblemType> All { get; } =
    [
        new("ambiguous-number", 400, "This number can mean several parts",
            "The same number stands on several parts, or it is a casting mark, which names none. The errors list the parts: ask again with maker=, or with the part as maker:number."),
        new("angle-tightened", 400, "The preload comes from the angle",
            "The fastener is turned on by an angle, or stretched for good: a torque says nothing about its preload. Follow the maker's document, pass by pass."),
        new("bad-book", 400, "The parts book has faults",
            "Nothing was stored. The errors name file, line and column, what was found, what was expected and how to mend it, up to a cap."),
        new("bad-build", 400, "The build has faults",
            "A member of the document is unknown, missing or of the wrong kind, or names what the base does not hold. The errors name each one with its place, such as wishes[2].position. Nothing was stored."),
        new("bad-image", 400, "The picture is not taken",
            "It is neither JPEG nor PNG, too large, cut short or damaged. The errors say what was found and how to mend it. Nothing was stored."),
        new("bad-order", 400, "The order has faults",
            "A member of the document is unknown, missing or of the wrong kind, names what the base does not hold, or tells what cannot have happened to the order as it is. The errors name each one. Nothing was stored."),
        new("bad-question", 400, "The question cannot be read",
            "A query parameter is missing, unknown, repeated, or has a value that it cannot have. The errors name each one with what was expected."),
        new("bad-request", 400, "The request cannot be read",
            "The request breaks HTTP or is not the JSON that the route expects."),
        new("bad-row", 400, "A row has faults",
            "Nothing was stored. The errors name each cell with what was found, what was expected and how to mend it."),
        new("bsfc-impossible", 400, "More work than heat",
            "The specific consumption is below what the fuel's heat allows even if all of it became work. The errors say where that limit lies."),
        new("carburetted", 400, "This variant has a carburettor",
            "The injector sums need injectors and a rail. Ask for a port-injected variant."),
        new("class-not-known", 400, "A property class without strengths",
            "The class recorded for the bolt is not 8.8, 10.9 or 12.9, and no other strengths are held. Give class= if the head bears one of them."),
        new("cylinders-not-recorded", 400, "How many cylinders?",
            "The number of cylinders of this variant is not recorded. Give it with cylinders=."),
        new("different-lifts", 400, "Events at different lifts",
            "Valve events of one sum are stated at one lift: the same camshaft differs by tens of degrees between lifts. Give every event at the lift of at-lift=, or leave it out to take those recorded at 1 mm."),
        new("direct-injected", 400, "This variant injects into the cylinder",
            "The injector sums hold for port injection only: direct injection works at other pressures, in part of a stroke, against the cylinder."),
        new("host-not-allowed", 400, "Not a name of this server",
            "The Host header is not a loopback name, not an address the server listens on, and not in the setting PartMatch:Hosts."),
        new("no-pressure-across", 400, "No fuel would flow",
            "The manifold pushes back as hard as the rail pushes. Raise the rail pressure, or reference the regulator to the manifold."),
        new("no-time-to-inject", 400, "No time is left to inject",
            "The dead time of the shots takes up all the time that the duty limit allows in a cycle."),
        new("not-a-fastener", 400, "No fastener sits there",
            "What sits at the position is not held by the pull of a bolt. Choose a fastener, or type thread= beside the torque."),
        new("not-recorded", 400, "Nobody has recorded it",
            "The sum needs a number that is neither given nor recorded, or whose sources disagree. The errors name it: measure it and give it in the question, or record it with its evidence."),
        new("one-camshaft", 400, "One camshaft carries all the lobes",
            "This engine has no exhaust camshaft of its own, so the exhaust events cannot be shifted alone. Shift the camshaft with intake-…, which moves all of them."),
        new("out-of-range", 400, "Outside what it can be",
            "A value of the question lies outside what it can physically be. The errors name it with its bounds."),
        new("quantity-decimal-comma", 400, "Is the comma a decimal point?",
            "A comma can mean a decimal point or a thousands mark. Write one decimal point and no thousands mark."),
        new("quantity-needs-unit", 400, "Which unit?",
            "A bare number, a bare hp or a bare gal can mean several things. Write the unit: 180 kW, 240 hp(I), 245 PS, 3 gal(US)."),
        new("quantity-unreadable", 400, "Not a quantity",
            "Expected digits, at most one decimal point, an optional leading minus, and a unit of the unit table."),
        new("quantity-wrong-unit", 400, "A unit of another kind",
            "The unit is unknown or measures something else. A mass flow and a volume flow differ by a density that has to be stated."),
        new("thread-not-known", 400, "Which thread?",
            "The thread is not recorded, its sources exclude each other, or the parts fitted there differ. Give thread=, or name the part with part=."),
        new("thread-not-metric", 400, "Not an ISO metric thread",
            "The tightening sums hold for ISO metric threads, written M10×1.25; M10 means the coarse pitch."),
        new("turns-other-way", 400, "This camshaft is ground for turning the other way",
            "Driven the other way round it would run through its events backwards. Gears turn a camshaft against the crankshaft, a chain, a belt or one gear more turns it with it."),
        new("unknown-fuel", 400, "Which fuel?",
            "The sums know no density and heating value of this fuel. The errors list those that they know."),
        new("unreadable-listing", 400, "The listing cannot be read",
            "It is no text, or larger or more deeply nested than is read. The errors say what was found; the words of the page, selected and pasted, can always be read."),
        new("wrong-kind", 400, "A part of another kind",
            "The number names a part that is recorded as something else than what the question asks for there. The errors name both kinds."),
        new("token-needed", 401, "The edit token is needed",
            "This server has an edit token. Send it with every write: Authorization: Bearer followed by the token."),
        new("foreign-origin", 403, "A page of another site may not write here",
            "The browser says that the request comes from a page of another origin (Origin or Sec-Fetch-Site). Reads are open; writes are for this server's own pages and for programs."),
        new("not-found", 404, "Not found",
            "The path leads to no page, or names a family, variant, position, book or build that the base does not hold. An unknown part number is not an error."),
        new("method-not-allowed", 405, "Not done this way",
            "The route exists, but not for this HTTP method. The Allow header lists the methods it takes."),
        new("request-timeout", 408, "The request came too slowly",
            "The server waited for the rest of the request and gave up. Send it again."),
        new("build-outdated", 409, "The base no longer holds what the build names",
            "Since the build was stored, something that it names was renamed or removed. The errors name it with its place. Change the build, or bring the row back."),
        new("cannot-undo", 409, "The change cannot be taken back",
            "Rows of it were changed again since, or rows that came later rest on it. The errors name them. Nothing was stored."),
        new("conflict", 409, "It clashes with what is there",
            "The book exists (use mode=replace), a build of that code exists, or something outside it refers to what would go away. The errors name it. Nothing was stored."),
        new("in-use", 409, "Something else uses it",
            "Other rows refer to what would go away, or would be wrong afterwards. The errors name them. Nothing was stored."),
        new("merge-conflicts", 409, "The two books differ",
            "Cells of the same rows differ, and nobody has decided which to keep. Ask with Accept: text/csv for the table, write here or there into its last column, and send it back as decisions. Nothing was stored."),
        new("stale", 412, "Somebody else changed it",
            "The version that was named is not the present one. The problem holds both: the row or the build as it is now, and yours as it was sent. Nothing was stored."),
        new("too-large", 413, "Too large",
            "The body is larger than the route takes. Nothing was stored."),
        new("wrong-media-type", 415, "Another kind of document is expected",
            "The Content-Type is not one that the route takes. A parts book is sent as application/zip, a picture as image/jpeg or image/png, a price list as text/csv, a build as application/json."),
        new("version-needed", 428, "Which version was seen?",
            "A change of a row or a build names in If-Match the version that was seen, so that two editors never overwrite each other. Its ETag is its version."),
        new("fault", 500, "A fault in PartMatch",
            "The server could not finish the request, and logged why. Nothing was stored by this request."),
        new("base-busy", 503, "Another program is writing the base",
            "The base was locked for longer than this server waits. Nothing was stored by this request. Send it again, or end the other program."),
        new("planning-busy", 503, "Other plans are being worked out",
            "As many plans are worked out at once as the server allows (PartMatch:PlansAtOnce). Ask again after the seconds in Retry-After, or stop one of them."),
        new("disk-full", 507, "No room is left on the disk",
            "The base could not be written because its disk is full. Nothing was stored by this request. Free some space there, then send it again."),
    ];

    private static readonly FrozenDictionary<string, ProblemType> _byCode = All.ToFrozenDictionary(type => type.Code, StringComparer.Ordinal);

    public static ProblemType Get(string code) => _byCode[code];

    public static ProblemType? Find(string code) => _byCode.GetValueOrDefault(code);

    /// <summary>The sort of a bare HTTP status, for answers that the web server itself refused.</summary>
    public static ProblemType OfStatus(int status) => status switch
    {
        400 => Get("bad-request"),
        >= 500 => Get("fault"),
        _ => All.FirstOrDefault(type => type.Status == status) ?? Get("bad-request"),
    };
}

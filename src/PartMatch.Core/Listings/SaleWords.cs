using System.Globalization;
using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Is there any, in words.</summary>
internal static class StockWords
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly (Regex Words, Availability Means)[] _words =
    [
        (new(@"\b(?:sold out|already sold|now sold|ausverkauft|(?:schon|bereits) verkauft|épuisée?|déjà vendue?|slutsåld|redan såld|agotad[oa]|ya vendid[oa])\b"
            // "Is sold as a set" is how.
            + @"|\b(?:is|are|was|has been|have been|ist|sind|wurde|est|är)\s+(?:now\s+|already\s+)?(?:sold|verkauft|vendue?|såld)\s*(?:[,.!;)\n]|$)", Linear),
            Availability.SoldOut),
        (new(@"\b(?:discontinued|no longer available|nicht mehr lieferbar|entfallen|n['’]est plus disponible|utgått|descatalogad[oa])\b", Linear),
            Availability.Discontinued),
        (new(@"\b(?:out of stock|not in stock|nicht (?:auf|am) lager|nicht vorrätig|nicht lieferbar|en rupture(?: de stock)?|rupture de stock|ej i lager|"
            + @"inte i lager|sin existencias|sin stock)\b", Linear), Availability.OutOfStock),
        (new(@"\b(?:back-?order(?:ed)?|im rückstand|restnoterad)\b", Linear), Availability.BackOrder),
        (new(@"\b(?:pre-?order|vorbestell\w*|précommande|förbeställ\w*|reserva anticipada)\b", Linear), Availability.PreOrder),
        (new(@"\b(?:made to order|auf bestellung gefertigt|sur commande|tillverkas på beställning|bajo pedido)\b", Linear), Availability.MadeToOrder),
        (new(@"\b(?:reserved|reserviert|réservée?|reserverad|reservad[oa])\b", Linear), Availability.Reserved),
        (new(@"\b(?:limited availability|only \d+ left|nur noch \d+|plus que \d+|endast \d+ kvar|solo quedan \d+)\b", Linear),
            Availability.LimitedAvailability),
        (new(@"\b(?:in stock|on the shelf|(?:auf|am) lager|vorrätig|sofort lieferbar|en stock|disponible|i lager|finns i lager|en existencias)\b", Linear),
            Availability.InStock),
    ];

    private static readonly Regex _sold = new(@"(?:^|[,;.:!|(\n*–-]\s*)(?:sold|verkauft|vendue?|såld|sålt|vendid[oa])\s*(?:[,;.!|)\n*£€$–-]|$)"
        + @"|\b(?-i:SOLD|VERKAUFT|VENDUE?|SÅLD|SÅLT|VENDID[OA])\b", Linear);

    private static readonly Regex _pieces = new(
        @"\b(?:stock|bestand|lager|lagersaldo|existencias)\s*:\s*(\d{1,6})\b|\b(\d{1,6})\s*(?:pcs |pieces |stück |st |uds )?(?:in stock|auf lager|en stock|"
            + @"i lager|en existencias|on the shelf|available|verfügbar|left\b)"
        + @"|\b(?:only|nur noch|plus que|endast|solo quedan) (\d{1,6})\b", Linear);

    private static readonly Regex _notGone = new(
        @"\b(?:not (?:yet )?(?:already |now )?sold(?: out)?|sold (?:as|by|with|without|in|individually|separately|to|for|complete|per)|verkauft (?:als|wird|von))\b", Linear);

    /// <summary>The words that say it is gone; null where none do.</summary>
    public static string? SaysGone(string text) => _words.Where(pair => pair.Means is Availability.SoldOut or Availability.Discontinued)
        .Select(pair => pair.Words.Match(_notGone.Replace(text, " "))).FirstOrDefault(match => match.Success)?.Value;

    /// <summary>"SOLD", as a statement by itself or in capitals. Only where a text begins: further down it stands on other things as well.</summary>
    public static bool SaysSold(string beginning) => _sold.IsMatch(_notGone.Replace(beginning, " "));

    public static Availability Find(string text) =>
        _words.Where(pair => pair.Words.IsMatch(_notGone.Replace(text, " "))).Select(pair => pair.Means).FirstOrDefault();

    private static readonly Regex _counts = new(@"^\s*(?:%|pcs|pieces|days?|tage|werktage|working|business|jours|dagar|días|weeks?|wochen|kg|km|mm|cm|nm|"
        + @"bar|x\b|-|–)", Linear);

    /// <summary>Do the words after a number make it a count of something, and not money?</summary>
    public static bool Counts(string after) => _counts.IsMatch(after);

    public static int? Pieces(string text) => FirstWhole(_pieces, text);

    internal static int? FirstWhole(Regex words, string text) =>
        words.Match(text) is { Success: true } match && match.Groups.Cast<Group>().Skip(1).FirstOrDefault(group => group.Success) is { } found
            && int.TryParse(found.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var value)
            ? value
            : null;
}

/// <summary>How many pieces a price is for, in words.</summary>
internal static class PieceWords
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _pair = new(@"\b(?:(?:a|1|one|sold as a|price per) pair\b|pair of\b|^pair\b|paar\b|une paire|la paire|paire de|ett par\b|"
        + @"par om|un par\b|pareja de)", Linear);

    private static readonly Regex _set = new(
        @"\b(?:set|kit|pack|lot|box|satz|sats|jeu|juego|conjunto|pack|4er-?set) (?:of|mit|à|von|de|om|med|with) (\d{1,3})\b|\b(\d{1,3})\s?er[- ]?(?:satz|"
            + @"set|pack)\b|\b(\d{1,3})[- ]?(?:pcs|pc|pieces|stk|stück|pièces|uds|unidades|delar)\b"
        + @"|^\s*(\d{1,2})\s?[x×] ?[a-zäöåé]", Linear);

    private static readonly Regex _each = new(
        @"\b(?:each|apiece|a piece|per piece|(?:pro|je|per) (?:stück|stk|styck|st)|la pièce|l['’]unité|styckpris|cada un[oa]|por unidad)\b", Linear);

    /// <summary>"2x pump, £40 each" is the price of one.</summary>
    public static bool SaysEach(string text) => _each.IsMatch(text);

    /// <summary>Null where nothing is said, or where it is not more than one.</summary>
    public static int? Find(string text) => StockWords.FirstWhole(_set, text) is > 1 and var many ? many : _pair.IsMatch(text) ? 2 : null;
}

/// <summary>How much of an engine is sold, in words.</summary>
public static class LevelWords
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _notHeard = new(
        @"\b(?:not|never|nicht|nie|pas|jamais|inte|ej|aldrig|no|nunca)\s+(?:been\s+)?(?:heard|seen|run|gehört|entendu|hörd|oíd\w*)\w*(?:\s+running)?|"
            + @"\buntested\b|\bungeprüft\b", Linear);

    private static readonly Regex _heard = new(
        @"\b(?:heard running|seen running|ran (?:well|fine|before removal)|runs? (?:well|fine|perfectly)|running when (?:removed|pulled)|test ?run|"
            + @"video of it running|lief (?:bis|vor|einwandfrei)|läuft einwandfrei|"
        + @"probelauf|laufend gehört|entendu tourner|vu tourner|tournait|provkörd|hörd gående|gick bra|se (?:oyó|vio) funcionar|probado en marcha)\b", Linear);

    private static readonly (Regex Words, AssemblyLevel Means)[] _levels =
    [
        (new(@"\b(?:complete engine|engine complete|engine,? complete|full engine|komplettmotor|motor komplett|kompletter motor|moteur complet|"
            + @"komplett motor|motor completo)\b", Linear), AssemblyLevel.Complete),
        (new(@"\b(?:long (?:block|engine|motor)|longblock|motor med topp|bas bloc et culasse|motor con culata)\b", Linear), AssemblyLevel.Long),
        (new(@"\b(?:short (?:block|engine|motor)|shortblock|rumpfmotor|bas moteur|underdel motor|bloque con cigüeñal)\b", Linear), AssemblyLevel.Short),
        (new(@"\b(?:bare (?:block|head|casting|cylinder head)|block only|casting only|(?:nackter|blanker) (?:block|kopf)|nur block|bloc nu|culasse nue|"
            + @"naket block|bloque desnudo|culata desnuda)\b", Linear), AssemblyLevel.Bare),
    ];

    /// <summary>The words that name less of an engine; null where none do. One that was heard running is a complete one.</summary>
    public static string? SaysLess(string text, AssemblyLevel level) =>
        _levels.Where(one => one.Means < (level == AssemblyLevel.HeardRunning ? AssemblyLevel.Complete : level)).Select(one => one.Words.Match(text)).FirstOrDefault(match => match.Success)?.Value;

    /// <summary>Two levels named of one thing are none: the words do not say which is sold. Heard running counts only of a complete engine.</summary>
    public static AssemblyLevel Find(string text)
    {
        var named = _levels.Where(level => level.Words.IsMatch(text)).Select(level => level.Means).ToList();
        return named.Count != 1 ? AssemblyLevel.NotStated
            : named[0] == AssemblyLevel.Complete && _heard.IsMatch(_notHeard.Replace(text, " ")) ? AssemblyLevel.HeardRunning
            : named[0];
    }
}

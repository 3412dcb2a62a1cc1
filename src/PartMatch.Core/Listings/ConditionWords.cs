using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Words of condition in English, German, French, Swedish and Spanish. Trade usage, from memory.</summary>
public static class ConditionWords
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _notDamaged = new(
        @"\b(?:not|no|never|without|nicht|kein(?:e|en|erlei)?|ohne|pas|sans|aucun|inte|ej|utan|ingen|sin|ningún)\s+(?:\w+\s+)?(?:damag\w*|defect\w*|"
            + @"defekt\w*|broken|cracked|cracks?|beschädig\w*|schäden|dommages?|"
        + @"défauts?|skad\w*|daños?|averiad\w*|rotur\w*|seized|grippée?s?|skuren)|\bundamaged\b|\bunbeschädigt\w*|\boskadad\w*", Linear);

    private static readonly Regex _damaged = new(
        @"\b(?:damaged|defective|broken|cracked|faulty|not working|non[- ]?working|seized(?: up| solid)?|(?:will|does) not turn|won['’]t turn|only good (?:as|for)|cores? only|(?:for|as) (?:parts|spares)(?: only)?|spares? or repairs?|for repair|"
            + @"parts only|festgefressen\w*|grippée?s?|har skurit|gripad[oa]s?|defekt\w*|beschädigt\w*|kaputt\w*|"
        + @"für bastler|bastlerstück|ersatzteilspender|als ersatzteilträger|hors service|en panne|endommagée?s?|cassée?s?|pour pièces|trasig\w*|skadad\w*|"
        + @"sönder|reservdelsobjekt|averiad[oa]s?|"
        + @"dañad[oa]s?|para piezas|para despiece|rot[oa]s?)\b", Linear);

    // "Can be used on", "used by", "used once", "never used": a verb, or the contrary.
    private static readonly Regex _notUsed = new(
        @"\b(?:be|been|being|is|are|was|were|get|gets|can|may)\s+used\b|\bused\s+(?:by|on|in|for|to|with|as|from|once|only|when|where|it|them)\b"
        + @"|\b(?:never|not|nicht|nie|jamais|pas|aldrig|inte|nunca|sin)[ -](?:used|gebraucht|begagnad\w*|usad[oa]s?)\b", Linear);

    private static readonly Regex _refurbished = new(
        @"\b(?:refurbished|reconditioned|remanufactured|reman|rebuilt|overhauled|exchange unit|(?:general|grund)?überholt\w*|aufbereitet\w*|"
            + @"aufgearbeitet\w*|instandgesetzt\w*|austauschteil|reconditionnée?s?|"
        + @"rénovée?s?|remis à neuf|échange standard|renoverad\w*|reconditionad\w*|reacondicionad[oa]s?|reconstruid[oa]s?)\b", Linear);

    private static readonly Regex _used = new(
        @"\b(?:used|second[- ]?hand|pre-?owned|removed from (?:a|an|the|my)|ausgebaut\w*|like new|as new|gebraucht\w*|neuwertig\w*|d['’]occasion|occasion|usagée?s?|comme neuf|begagnad\w*|som ny|"
            + @"usad[oa]s?|segunda mano|como nuev[oa])\b", Linear);


    private const string PlainNews = "new|neu|neuf|neuve|ny|nytt|nya|nuevo|nueva";

    // "It cost new € 120": the price that another one had.
    private static readonly Regex _notNew = new(
        $@"\b(?:costs?|was|were|paid|bought|price|kostet\w*|war|gekauft|preis|coûte|coûtait|payée?|prix|kostar|kostade|köpt|"
            + $@"cuesta|costaba|precio)\s+(?:\w+\s+)?(?:{PlainNews})\b", Linear);

    // "New" by itself says little in running text ("a new number"): there it has to stand as a statement of its own.
    private static readonly Regex _new = new(
        @"\b(?:brand[- ]new|new old stock|nos|unused|new in (?:box|bag)|it(?: is|['’]s) (?:still )?new|they are (?:still )?new|still in (?:its|the|their) (?:box|bag|packet|wrapper|foil)|factory new|nagelneu|fabrikneu|neuteil|unbenutzt|ungebraucht|originalverpackt|ovp|"
            + @"neuf d['’]origine|tout neuf|jamais monté|neuve?s? en boîte|"
        + @"helt ny|fabriksny|oanvänd\w*|sin usar|a estrenar|totalmente nuev[oa]|condition new|in new condition|zustand neu|état neuf|skick ny|estado nuevo)\b"
        + $@"|(?:^|[,;.!|•·(\n]\s*)(?:{PlainNews})\s*(?:[,;.!|•·)\n€£$]|$)|\b(?:{PlainNews})\s*[€£$]\s*\d", Linear);

    private static readonly Regex _plainNew = new(@"^\W*(?:new|neu\w?|neufs?|neuves?|ny|nytt|nya|nuev[oa]s?)\b", Linear);

    /// <summary>Of running text. The worst that is said counts: "used, with new seals" is used.</summary>
    public static ItemCondition Find(string text) =>
        SaysDamaged(text) is not null ? ItemCondition.Damaged
        : _refurbished.IsMatch(text) ? ItemCondition.Refurbished
        : SaysUsed(text) is not null ? ItemCondition.Used
        : _new.IsMatch(_notNew.Replace(text, " ")) ? ItemCondition.New
        : ItemCondition.NotStated;

    /// <summary>The words that say it is damaged, or for its parts; null where none do.</summary>
    public static string? SaysDamaged(string text) => Words(_damaged, _notDamaged.Replace(text, " "));

    /// <summary>The words that say it was in use; null where none do.</summary>
    public static string? SaysUsed(string text) => Words(_used, _notUsed.Replace(text, " "));

    private static string? Words(Regex words, string text) => words.Match(text) is { Success: true } match ? match.Value : null;

    /// <summary>Of a text that says nothing but the condition ("Condition: new").</summary>
    public static ItemCondition Stated(string text) =>
        Find(text) is var found && found != ItemCondition.NotStated ? found : _plainNew.IsMatch(text) ? ItemCondition.New : ItemCondition.NotStated;
}

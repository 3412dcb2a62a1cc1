using System.Collections.Frozen;

namespace PartMatch.Core.Listings;

/// <summary>
/// The words that make something of a number, in English, German, French, Swedish and Spanish, whatever language the page declares: sellers
/// mix them. Common practice, no source. Accents are written or left out.
/// </summary>
internal static class RoleWords
{
    private const string Fits =
        "fits|fit|fitting|suits|suitable for|suitable|compatible with|compatible|works with|to fit|fitment|passend für|passend fuer|"
        + "passend zu|passend|passt|passen|passt für|passt auf|"
        + "geeignet für|verwendbar für|kompatibel mit|convient|convient pour|conviennent|adaptable sur|adaptable|compatible avec|destiné à|"
        + "passar|passar till|passande|lämplig för|kompatibel med|"
        + "sirve|sirve para|vale para|válido para|valido para|apto para|adecuado para|compatible con|es para";

    private const string For = "for|für|fuer|pour|för|till|para";

    private const string Replaces =
        "replaces|replace|replacing|replacement for|replacement of|in place of|instead of|supersedes|superseding|stands in for|"
        + "substitute for|equivalent to|cross reference|cross references|interchange|"
        + "ersetzt|ersetzen|ersatz für|ersatz fuer|anstelle von|anstatt|statt|vergleichsnummer|vergleichsnummern|remplace|remplacent|"
        + "remplacement de|remplacement pour|au lieu de|équivalent à|"
        + "référence croisée|références croisées|ersätter|ersättning för|ersättare för|istället för|i stället för|motsvarar|"
        + "reemplaza|reemplaza a|reemplazan|sustituye|sustituye a|sustituto de|recambio de|en lugar de|equivale a|equivalente a";

    private const string Mentions =
        "replaced by|superseded by|replaced with|ersetzt durch|ersetzt von|abgelöst durch|remplacé par|remplacée par|ersatt av|ersätts av|" +
        "if it is|if it s|whether it is|unless it is|ob es|si c est|om det är|si es|"
        + "looks like|look like|look like the|looks like the|similar to|resembles|i think|i believe|probably|maybe|perhaps|should be|could be|might be|"
        + "sieht aus wie|sehen aus wie|ähnlich|vermutlich|wahrscheinlich|könnte|ressemble à|semblable à|sans doute|probablement|peut être|"
        + "ser ut som|liknar|kanske|troligen|se parece a|parecido a|quizá|quizás|probablemente|creo que|"
        + "ersatt med|reemplazado por|reemplazada por|sustituido por|sustituida por";

    private const string Sold =
        "part number|part numbers|part no|part nos|part nr|partno|partnumber|p n|pn|p no|oem|oe|oem number|oe number|oem no|oe no|mpn|"
        + "manufacturer number|manufacturer part number|reference|reference number|ref no|"
        + "casting|casting number|casting no|casting mark|marked|stamped|teilenummer|teilenummern|teile nr|teile nummer|ersatzteilnummer|"
        + "originalnummer|original nummer|oe nummer|oem nummer|artikelnummer|"
        + "bestellnummer|gussnummer|gussnr|guss nr|référence|référence constructeur|référence origine|réf|numéro de pièce|numéro de fonderie|"
        + "artikelnr|reservdelsnummer|detaljnummer|originalnr|gjutnummer|"
        + "número de pieza|numero de parte|número de parte|referencia|referencia original|número de fundición|nº de pieza";

    private const string SellersOwn =
        "our ref|our reference|our no|our number|our part number|our part no|item no|item number|item nr|sku|stock no|stock number|"
        + "stock code|shop no|unsere nr|unsere nummer|unsere artikelnummer|unsere teilenummer|"
        + "lagernummer|lagernr|lager nr|interne nummer|notre réf|notre référence|réf interne|référence interne|vårt nr|vårt nummer|"
        + "vårt artikelnummer|vår ref|internt nummer|nuestra ref|nuestra referencia|"
        + "ref interna|referencia interna";

    private const string Not =
        "not|never|isn t|doesn t|don t|won t|without|nicht|kein|keine|ohne|ne|n est|pas|sans|inte|ej|utan|sin|no es|no son|no vale|"
        + "no sirve|no compatible|no apto|no apta|no para|nunca|no encaja|"
        + "not for|not compatible|incompatible with|inkompatibel";

    private const string But = "but|aber|sondern|mais|men|pero|sino|jedoch";

    private const string Is =
        "it is|it s|it is really|it s really|it is actually|it s actually|it really is|it actually is|is really|is actually|in fact|correct number|"
        + "correct number is|right number is|es ist|es ist in wirklichkeit|es ist tatsächlich|ist in wirklichkeit|ist tatsächlich|richtig ist|"
        + "c est|c est en fait|c est en réalité|en réalité|det är|det är egentligen|är egentligen|i själva verket|es en realidad|en realidad es|realmente es";

    private const string OtherNumber =
        "tel|phone|telephone|telefon|mobile no|mobil nr|fax|whatsapp|call us|anrufen|téléphone|tél|teléfono|móvil|vin|chassis number|"
        + "chassis no|fahrgestellnummer|fgstnr|numéro de châssis|"
        + "chassinummer|número de bastidor|ean|gtin|upc|barcode|iban|bic|vat|vat no|ust idnr|steuernummer|siret|siren|tva|orgnr|org nr|nif|"
        + "cif|order no|order number|invoice|bestellnr|tracking";

    private const string Nothing =
        "not only|nicht nur|pas seulement|non seulement|inte bara|no sólo|no solo|for sale|for spares|for parts|for repair|for free|"
        + "for more|for details|zu verkaufen|en venta|till salu|no returns|"
        + "good fit|best fit|easy to fit|not included|not sure|not tested|not used|nicht enthalten|nicht geprüft|without box|ohne rechnung|"
        + "pas de retour";

    private static readonly FrozenDictionary<string, Phrase[]> _byFirstWord = Phrases();

    private sealed record Phrase(string[] Words, CueKind Kind);

    /// <returns>In the order of the text, none over another; the phrase with the most words where several begin at one.</returns>
    public static IReadOnlyList<Cue> In(string text)
    {
        var cues = new List<Cue>();
        var firstWords = _byFirstWord.GetAlternateLookup<ReadOnlySpan<char>>();
        for (var at = 0; at < text.Length;)
        {
            var end = WordEnd(text, at);
            if (end == at)
            {
                at++;
                continue;
            }

            var cue = firstWords.TryGetValue(text.AsSpan(at, end - at), out var phrases) && IsFreeOfDigits(text, at, at) ? Longest(text, at, end, phrases) : null;
            if (cue is not null)
            {
                cues.Add(cue);
            }

            at = cue?.End ?? end;
        }

        return cues;
    }

    private static Cue? Longest(string text, int start, int firstEnd, Phrase[] phrases)
    {
        foreach (var phrase in phrases)
        {
            var end = firstEnd;
            for (var word = 1; word < phrase.Words.Length && end > 0; word++)
            {
                end = NextWordEnd(text, end, phrase.Words[word]);
            }

            if (end > 0 && IsFreeOfDigits(text, start, end))
            {
                return new Cue(start, end, phrase.Kind);
            }
        }

        return null;
    }

    // Behind the word, if it is the next one; otherwise -1. "p/n", "Teile-Nr.", "doesn't" and a line break between the words are all the same.
    private static int NextWordEnd(string text, int from, string word)
    {
        var at = from;
        while (at < text.Length && at - from < 4 && (char.IsWhiteSpace(text[at]) || text[at] is '.' or '-' or '/' or '\'' or '\u2019' or '\u00B0' or '\u2010' or '\u2011'))
        {
            at++;
        }

        var end = WordEnd(text, at);
        return at > from && text.AsSpan(at, end - at).Equals(word, StringComparison.OrdinalIgnoreCase) ? end : -1;
    }

    private static int WordEnd(string text, int at)
    {
        while (at < text.Length && char.IsLetter(text[at]))
        {
            at++;
        }

        return at;
    }

    // A word glued to a digit, or tied to one before it, is a piece of a number: the NO in "12-NO-3".
    private static bool IsFreeOfDigits(string text, int start, int end) =>
        (start == 0 || !(char.IsDigit(text[start - 1]) || (start > 1 && text[start - 1] is '-' or '/' or '.' && char.IsDigit(text[start - 2]))))
        && (end == start || end >= text.Length || !char.IsDigit(text[end]));

    private static FrozenDictionary<string, Phrase[]> Phrases()
    {
        (string List, CueKind Kind)[] lists =
        [
            (Fits, CueKind.Fits), (For, CueKind.For), (Replaces, CueKind.Replaces), (Mentions, CueKind.Mentions), (Sold, CueKind.Sold), (SellersOwn, CueKind.SellersOwn),
            (Not, CueKind.Not), (But, CueKind.But), (Is, CueKind.Is), (OtherNumber, CueKind.OtherNumber), (Nothing, CueKind.Nothing),
        ];
        return lists.SelectMany(list => list.List.Split('|'), (list, phrase) => (Words: phrase, list.Kind))
            .SelectMany(phrase => (string[])[phrase.Words, Plain(phrase.Words)], (phrase, words) => new Phrase(words.Split(' '), phrase.Kind))
            .GroupBy(phrase => phrase.Words[0], StringComparer.OrdinalIgnoreCase)
            .ToFrozenDictionary(group => group.Key, group => group.OrderByDescending(phrase => phrase.Words.Length).ToArray(), StringComparer.OrdinalIgnoreCase);
    }

    private static string Plain(string words) => string.Concat(words.Select(letter => letter switch
    {
        'é' or 'è' or 'ê' => 'e',
        'á' or 'à' or 'â' or 'å' or 'ä' => 'a',
        'í' => 'i',
        'ó' or 'ö' => 'o',
        'ú' or 'ü' => 'u',
        _ => letter,
    }));
}

using System.Globalization;
using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Words for the terms of a sale. Trade usage in English, German, French, Swedish and Spanish, from memory.</summary>
internal static class TermWords
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _deposit = new(
        @"\b(?:core (?:deposit|charge|exchange)|exchange deposit|old part deposit|refundable core|(?:alt|tausch)teil-?(?:pfand|kaution|steuer|wert)|pfand|"
            + @"consigne|stompant|stomdeposition|pantavgift|"
        + @"depósito por (?:casco|pieza)|fianza)\b", Linear);

    private static readonly Regex _oldPart = new(
        @"(?:against return of|on return of|for return of|for your old|against your old|gegen rückgabe|bei rückgabe|bei rücksendung|contre retour|"
            + @"contre reprise|mot retur av|contra entrega de)\s+([^.;\n]{3,120})", Linear);

    private static readonly Regex _noReturns = new(
        @"\b(?:no returns?|non-?returnable|not returnable|sold as seen|returns? not accepted|keine (?:rücknahme|rückgabe)|rückgabe ausgeschlossen|"
            + @"vom umtausch ausgeschlossen|ni repris ni échangé|pas de retours?|"
        + @"aucun retour|ingen returrätt|ingen retur|inga returer|no se admiten devoluciones|sin devolución|sin devoluciones)\b", Linear);

    private static readonly Regex _returnDays = new(
        @"\b(\d{1,3})[- ](?:days?|tage|jours|dagars?|días)[ ’']?s? ?(?:money back|to return|returns?|return (?:policy|window|right)|rückgabe\w*|"
            + @"widerruf\w*|umtausch|retours?|returrätt|öppet köp|ångerrätt|de devolución|devoluci\w+)"
        + @"|\b(?:returns?|returnable|refund|rückgabe\w*|rücknahme|retours?|returrätt|devoluci\w+)[^.;\n\d]{0,25} (\d{1,3}) (?:days?|tage\w?|jours|dagar|"
        + @"días)\b", Linear);

    private static readonly Regex _returnable = new(@"\b(?:returns accepted|returnable|rückgabe möglich|rücknahme möglich|retours acceptés|retur möjlig|"
        + @"se admiten devoluciones)\b", Linear);

    private static readonly Regex _restocking = new(
        @"(\d{1,2}(?:[.,]\d)?) ?% ?(?:restocking|re-stocking|handling fee on returns|wiedereinlagerung\w*|rücknahmegebühr|frais de (?:restockage|"
            + @"remise en stock)|returavgift|återlagringsavgift|gastos de reposición)"
        + @"|(?:restocking|re-stocking|wiedereinlagerung\w*|rücknahmegebühr|restockage|remise en stock|returavgift|återlagringsavgift|"
        + @"reposición)[^.;\n\d]{0,20}(\d{1,2}(?:[.,]\d)?) ?%", Linear);

    private static readonly Regex _sellerPays = new(@"\b(?:free returns?|returns? free|we pay return|kostenlose? (?:rücksendung|rückgabe|retoure)|"
        + @"retours? gratuits?|fri retur|fria returer|devolución gratuita|devoluciones gratis)\b", Linear);

    private static readonly Regex _buyerPays = new(
        @"\b(?:buyer pays (?:for )?(?:the )?return|return (?:freight|postage|shipping)(?: costs?)?(?: is| are)?(?: paid)? (?:by|at|for) (?:the )?buyer|"
            + @"käufer trägt (?:die )?(?:kosten der )?rücksend\w*|rücksendekosten trägt der käufer|rücksendung auf kosten des käufers|"
        + @"retour à la charge de l['’]acheteur|köparen betalar returfrakten?|portes de devolución a cargo del comprador)\b", Linear);

    private static readonly Regex _returns = new(@"\b(?:returns?|refund|rückgabe\w*|rücknahme|widerruf\w*|umtausch|retours?|retur\w*|devoluci\w+)\b", Linear);

    public static bool SpeaksOfReturns(string text) => _returns.IsMatch(text);

    public static bool IsDeposit(string text) => _deposit.IsMatch(text);

    /// <summary>All that a text says of returning and of the old part; the deposit's amount is found with the other amounts.</summary>
    public static OfferTerms Find(string text)
    {
        var days = StockWords.FirstWhole(_returnDays, text);
        var returnable = _noReturns.IsMatch(text) ? Returnable.No : days > 0 || _returnable.IsMatch(text) ? Returnable.Yes : Returnable.NotStated;
        var percent = _restocking.Match(text) is { Success: true } match
            ? (match.Groups[1].Success ? match.Groups[1] : match.Groups[2]).Value.Replace(',', '.') : null;
        var oldPart = _oldPart.Match(text);
        return new(
            null, oldPart.Success ? oldPart.Groups[1].Value.Trim() : null, returnable, returnable == Returnable.Yes ? days : null,
            percent is null ? null : decimal.Parse(percent, CultureInfo.InvariantCulture),
            _sellerPays.IsMatch(text) ? FreightBack.Seller : _buyerPays.IsMatch(text) ? FreightBack.Buyer : FreightBack.NotStated);
    }

    /// <summary>What is said first stands; the other fills what it leaves open.</summary>
    public static OfferTerms Fill(OfferTerms first, OfferTerms other) => new(
        first.CoreDeposit ?? other.CoreDeposit, first.CorePart ?? other.CorePart, first.Returnable == Returnable.NotStated ? other.Returnable
            : first.Returnable,
        first.Returnable == Returnable.NotStated ? other.ReturnDays : first.ReturnDays, first.RestockingPercent ?? other.RestockingPercent,
        first.FreightBack == FreightBack.NotStated ? other.FreightBack : first.FreightBack);
}

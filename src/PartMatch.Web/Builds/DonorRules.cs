using FluentValidation;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Builds;

/// <summary>What the fields of a donor must be: of the one that the build has, and of those it could have.</summary>
internal static class DonorRules
{
    private const string AmountExpected = "an amount of the donor's currency, zero or more: digits and one decimal point";

    public static InlineValidator<Donor> Of(Build build)
    {
        var rules = new InlineValidator<Donor>();
        rules.RuleFor(donor => donor.Built).Must(built => built is null || BuildDate.Find(built) is not null)
            .Otherwise("a date as YYYY-MM or YYYY-MM-DD", "leave it out when it is not known");
        rules.RuleFor(donor => donor.Serial).Must(serial => serial is null or >= 0)
            .Otherwise("a whole number, not negative", "leave it out when it is not known");
        rules.RuleFor(donor => donor.Currency).MustBeCurrency().When(donor => donor.Currency is not null);
        rules.RuleFor(donor => donor.Price).Must((donor, price) => IsAmount(build, donor, price)).Otherwise(AmountExpected, BuildDocumentRules.AmountMend);
        rules.RuleFor(donor => donor.Freight).Must((donor, freight) => IsAmount(build, donor, freight))
            .Otherwise(AmountExpected, "0 where it costs nothing to fetch; leave it out when it is not known");
        rules.RuleFor(donor => donor.SeenOn).Must(BuildDocumentRules.IsDay).Otherwise(BuildDocumentRules.DayExpected, "leave it out when it is not known");
        rules.RuleFor(donor => donor.Note).Must(BuildDocumentRules.IsNote).Otherwise(BuildDocumentRules.NoteExpected);
        rules.RuleFor(donor => donor.ComesWith).Must(BuildDocumentRules.IsBounded).Otherwise(BuildDocumentRules.EntriesExpected);
        rules.RuleForEach(donor => donor.ComesWith).SetValidator(BuildDocumentRules.HeldRules());
        rules.RuleFor(donor => donor.States).Must(BuildDocumentRules.IsBounded).Otherwise(BuildDocumentRules.EntriesExpected);
        rules.RuleForEach(donor => donor.States).SetValidator(donor => StateRules(build, donor));
        return rules;
    }

    public static InlineValidator<DonorOffer> OfOffer(Build build)
    {
        var rules = new InlineValidator<DonorOffer>();
        rules.RuleFor(offer => offer.Code).Must(BuildDocumentRules.IsCode).Otherwise(BuildDocumentRules.CodeExpected, "for example yard-in-the-valley");
        rules.RuleFor(offer => offer.Code).Must(code => code != DonorOffers.Present)
            .Otherwise($"another code than {DonorOffers.Present}", "that is what the donor is called that the build has");
        rules.RuleFor(offer => offer.Code).Must(code => build.Donors.Count(other => other.Code == code) == 1).Otherwise("each code once");
        rules.RuleFor(offer => offer.Name).Must(BuildDocumentRules.IsTitle).Otherwise(BuildDocumentRules.TitleExpected);
        rules.RuleFor(offer => offer.Donor).SetValidator(Of(build));
        return rules;
    }

    // What is set aside and what is sold stands in the sum of the plan, in the build's currency.
    private static InlineValidator<DonorState> StateRules(Build build, Donor donor)
    {
        const string Expected = "an amount of the build's currency, zero or more: digits and one decimal point";
        var rules = new InlineValidator<DonorState>();
        rules.RuleFor(state => state.Allowance).Must(amount => BuildDocumentRules.IsAmount(build, amount)).Otherwise(Expected, BuildDocumentRules.AmountMend);
        rules.RuleFor(state => state.SellsFor).Must(amount => BuildDocumentRules.IsAmount(build, amount)).Otherwise(Expected, BuildDocumentRules.AmountMend);
        rules.RuleFor(state => state.Position).Must(position => donor.States.Count(other => other.Position == position) == 1)
            .Otherwise("each position once", "say all of a position in one entry");
        rules.RuleFor(state => state.Note).Must(BuildDocumentRules.IsNote).Otherwise(BuildDocumentRules.NoteExpected);
        return rules;
    }

    private static bool IsAmount(Build build, Donor donor, string? amount) => BuildDocumentRules.IsAmountOf(donor.Currency ?? build.Currency, amount);
}

using FluentValidation;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Finished;
using PartMatch.Core.Measures;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Finished;

/// <summary>What can be told of a finished build.</summary>
internal static class SittingRules
{
    public const int MaxErrors = 20;

    private const int MostLines = 500;
    private const int LongestText = 200;
    private const int LongestNote = 2000;

    /// <param name="today">UTC. A day ahead is let pass: where the sun rises first it is tomorrow already.</param>
    public static InlineValidator<Sitting> Make(FamilyFacts family, BuildNames names, DateOnly today)
    {
        var rules = new InlineValidator<Sitting>();
        rules.RuleFor(sitting => sitting.Date).Must(date => BuildDate.Find(date) is not null).Otherwise("a date as YYYY-MM or YYYY-MM-DD");
        rules.RuleFor(sitting => sitting.Date).Must(date => BuildDate.Find(date) is not { } read || read.First <= today.AddDays(1))
            .Otherwise(FormattableString.Invariant($"a date not after {today:yyyy-MM-dd}, which is today"), "record what was found once it was found");
        rules.RuleFor(sitting => sitting.Hours).Must(hours => hours is null || QuantityParser.FindNumber(hours) is >= 0)
            .Otherwise("hours as a plain number, zero or more", "leave it out where nobody counted");
        rules.RuleFor(sitting => sitting.Output).MustBeQuantity(Dimension.Power);
        rules.RuleFor(sitting => sitting.Hours).Must((sitting, hours) => hours is null || sitting.Lines.Any(line => line.Runs is not null))
            .Otherwise("nothing where nothing is said of how the engine ran", "say of at least one position how the engine ran with it, or leave the hours out");
        rules.RuleFor(sitting => sitting.Lines).Must(lines => lines.Any(line => line.IsTold))
            .WithState(_ => new Mending("something found of at least one position", "say of one whether it went on, or how the engine ran with it", "nothing"));
        rules.RuleFor(sitting => sitting.Lines).Must(lines => lines.Count <= MostLines)
            .WithState((_, lines) => new Mending($"at most {MostLines} positions", null, FormattableString.Invariant($"{lines.Count}")));
        rules.RuleFor(sitting => sitting.Fuel).Must(IsShort).Otherwise(ShortExpected);
        rules.RuleFor(sitting => sitting.Instrument).Must(IsShort).Otherwise(ShortExpected);
        rules.RuleFor(sitting => sitting.Author).Must(IsShort).Otherwise(ShortExpected);
        rules.RuleForEach(sitting => sitting.Lines).ChildRules(line =>
        {
            line.RuleFor(one => one.Mounts).Must(outcome => outcome is null or FindingOutcome.Yes or FindingOutcome.WithWork or FindingOutcome.No)
                .WithState((_, outcome) => new Mending("yes, with-work or no", "leave it out where it was not tried", Codes.Of(outcome ?? default)));
            line.RuleFor(one => one.Runs).Must(outcome => outcome is null or FindingOutcome.Same or FindingOutcome.Differently)
                .WithState((_, outcome) => new Mending("same or differently", "leave it out where it was not run", Codes.Of(outcome ?? default)));
            line.RuleFor(one => one.Note).Must(note => note is null or { Length: <= LongestNote }).Otherwise($"a text of at most {LongestNote} characters");
        });
        rules.RuleForEach(sitting => sitting.Lines).Must((sitting, line) => sitting.Lines.Count(other => other.Position == line.Position) == 1)
            .WithState((_, line) => new Mending("each position once", "say all of a position in one line", line.Position));
        rules.RuleForEach(sitting => sitting.Lines).Custom((line, context) =>
        {
            var index = context.InstanceToValidate.Lines.Index().First(one => ReferenceEquals(one.Item, line)).Index;
            foreach (var fault in names.LineFaults($"lines[{index}]", line.Position, line.Part, family))
            {
                context.AddFailure(new FluentValidation.Results.ValidationFailure(fault.Field, fault.Expected)
                {
                    CustomState = new Mending(fault.Expected, fault.Mend, fault.Found),
                });
            }
        });
        return rules;
    }

    /// <summary>Something is told of what, as far as it is known, is not here or not worked.</summary>
    /// <param name="notYet">In words of the parts list.</param>
    public static FieldError NotHere(int line, IReadOnlyList<string> notYet) => new(
        FormattableString.Invariant($"lines[{line}].stands"), string.Join("; ", notYet), "a part that is here, looked at and worked, or a word that it is all the same",
        "tell first that it came and was right, or leave this line out; where it stands all the same, say so (stands: true)");

    private const string ShortExpected = "a text of at most 200 characters";

    private static bool IsShort(string? text) => text is null or { Length: <= LongestText };
}

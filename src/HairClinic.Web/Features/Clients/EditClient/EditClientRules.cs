namespace HairClinic.Web.Features.Clients;

public sealed class EditClientRules : AbstractValidator<EditClient.Input>
{
    public const string OwnSalons =
        "Choose one of your own salons, and only for a client of theirs. To any other salon a client is transferred, under Who may see.";

    public const string HomeAddress = "It opens their own pages, so only their home salon changes it.";

    /// <param name="offered">The salons that stand in the form, where it is known which.</param>
    public EditClientRules(Func<IReadOnlyList<EditClient.SalonChoice>>? offered = null)
    {
        RuleFor(x => x.HomeSalonId)
            .Must(id => offered!().Any(s => s.Id == id))
            .When(x => offered is not null && x.HomeSalonId != Guid.Empty)
            .WithMessage(OwnSalons);
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the client's name.")
            .MaximumLength(200)
            .WithMessage("A name has at most 200 letters.");
        RuleFor(x => x.CalledAs).MaximumLength(200).WithMessage("A name has at most 200 letters.");
        RuleFor(x => x.Code)
            .NotEmpty()
            .WithMessage("Type a code: it stands on labels instead of the name.")
            .MaximumLength(40)
            .WithMessage("A code has at most 40 letters.");
        RuleFor(x => x.HomeSalonId).NotEmpty().WithMessage("Choose the salon they mostly come to.");
        RuleFor(x => x.Email)
            .EmailAddress()
            .When(x => !string.IsNullOrWhiteSpace(x.Email))
            .WithMessage("This does not look like an e-mail address.");
        RuleFor(x => x.WashEveryDays)
            .InclusiveBetween(1, WashVisitRhythm.LongestDays)
            .WithMessage("A wash-and-style rhythm lies between 1 and 56 days.");
        RuleFor(x => x.Note).MaximumLength(2000).WithMessage("A note has at most 2,000 letters.");
    }
}

namespace HairClinic.Web.Features.Clients;

public sealed class PhotosRules : AbstractValidator<Photos.Input>
{
    public PhotosRules()
    {
        RuleFor(x => x.Kind).IsInEnum().WithMessage("Choose what the photo shows.");
        RuleFor(x => x.Agreed).Equal(true).WithMessage("Ask the client first, and say that they agreed.");
    }
}

namespace HairClinic.Web.Data.Phones;

/// <summary>Why something typed is not taken as a phone number.</summary>
public enum PhoneFault
{
    None,
    NotANumber,
    HasExtension,
    DoesNotExist,
}

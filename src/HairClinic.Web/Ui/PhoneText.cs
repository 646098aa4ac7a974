using PhoneNumbers;

namespace HairClinic.Web.Ui;

/// <summary>A kept phone number as people read it: in groups, with its country.</summary>
public static class PhoneText
{
    /// <param name="kept">E.164; what is not, such as a number from before, is shown as it is.</param>
    public static string Format(string kept)
    {
        try
        {
            var numbers = PhoneNumberUtil.GetInstance();
            return numbers.Format(numbers.Parse(kept, null), PhoneNumberFormat.INTERNATIONAL);
        }
        catch (NumberParseException)
        {
            return kept;
        }
    }
}

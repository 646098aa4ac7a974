using FluentValidation;
using FluentValidation.Results;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Practices;
using HairClinic.Web.Ui.Feedback;

namespace HairClinic.Web.Shell;

/// <summary>
/// One form's way to its slice: rules first, then the deed under an id made when the form opened, so that a
/// double tap or a retry is harmless. Whatever goes wrong, what was typed stays.
/// </summary>
public sealed class Submission<TInput>(IValidator<TInput> rules)
{
    public Guid Key { get; private set; } = Guid.CreateVersion7();

    /// <summary>What the rules said last, or the domain's no about one field: each stands at its field.</summary>
    public ValidationResult? Check { get; private set; }

    /// <summary>The domain's no about the whole, to be shown in words.</summary>
    public Refusal? Refused { get; private set; }

    /// <summary>Someone else saved first; the form shows what changed and keeps what was typed.</summary>
    public bool WasOvertaken { get; private set; }

    public bool Saving { get; private set; }

    /// <returns>Whether it was carried out.</returns>
    public async Task<bool> SendAsync(TInput input, Func<Guid, Task> save)
    {
        if (Saving)
            return false;
        (Refused, WasOvertaken) = (null, false);
        Check = rules.Validate(input);
        if (!Check.IsValid)
            return false;
        Saving = true;
        try
        {
            await save(Key);
            Key = Guid.CreateVersion7();
            return true;
        }
        catch (Refusal refusal) when (refusal.Field is { } field && typeof(TInput).GetProperty(field) is not null)
        {
            Check = new ValidationResult([FaultText.At(field, refusal)]);
        }
        catch (Refusal refusal)
        {
            Refused = refusal;
        }
        catch (ActorChangedException)
        {
            Refused = new Refusal(
                "Your sign-in has changed or ended since this page opened, so nothing was saved. Open the page again in another tab and sign in."
            );
        }
        catch (TooBusyException)
        {
            Refused = new Refusal(TooBusyException.Sentence);
        }
        catch (OvertakenException)
        {
            WasOvertaken = true;
        }
        finally
        {
            Saving = false;
        }
        return false;
    }
}

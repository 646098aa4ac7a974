using FluentValidation;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace HairClinic.Web.Features.Practices.Parts;

/// <summary>
/// What all edit pages of the practice share: open, save once, go on. Whoever saves second is shown what the
/// first one saved and keeps what they typed.
/// </summary>
public abstract class EditPage<TInput> : LiveComponent
    where TInput : class, IEditable
{
    [Inject]
    public NavigationManager Navigation { get; set; } = default!;

    [Inject]
    public IValidator<TInput> Rules { get; set; } = default!;

    public Submission<TInput> Submission { get; private set; } = default!;

    public TInput? Input { get; private set; }

    /// <summary>What someone else saved meanwhile.</summary>
    public TInput? Theirs { get; private set; }

    protected override async Task OnInitializedAsync()
    {
        Submission = new(Rules);
        Input = await OpenAsync();
        if (Input is null)
            Navigation.NotFound();
    }

    public async Task SaveAsync()
    {
        if (Input is null)
            return;
        Theirs = null;
        string? next = null;
        if (await Submission.SendAsync(Input, async key => next = await KeepAsync(key, Input)))
        {
            GoTo(next!);
            return;
        }
        Input.Retire = false;
        if (Submission.WasOvertaken && await OpenAsync() is { } theirs)
            (Theirs, Input.Version) = (theirs, theirs.Version);
        StateHasChanged();
    }

    public Task RetireAsync()
    {
        Input!.Retire = true;
        return SaveAsync();
    }

    /// <summary>A new form, or the row as it stands; null where there is none for this person.</summary>
    protected abstract Task<TInput?> OpenAsync();

    /// <returns>Where to go next.</returns>
    protected abstract Task<string> KeepAsync(Guid key, TInput input);

    protected virtual void GoTo(string next) => Navigation.NavigateTo(next);
}

using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Edits;
using HairClinic.Web.Ui;
using Microsoft.AspNetCore.Components;

namespace HairClinic.Web.Features.Settings;

/// <summary>
/// What all edit pages of the practice share: open, save once, go on. Whoever saves second is shown what the
/// first one saved and keeps what they typed.
/// </summary>
public abstract class EditPage<TInput> : LiveComponent
    where TInput : class, IEditInput
{
    private readonly Dictionary<object, string> _names = [];
    private TInput? _opened;

    [Inject]
    public NavigationManager Navigation { get; set; } = default!;

    [Inject]
    public IValidator<TInput> Rules { get; set; } = default!;

    public Submission<TInput> Submission { get; private set; } = default!;
    public TInput? Input { get; private set; }

    /// <summary>What someone else saved meanwhile; null where nobody did.</summary>
    public IReadOnlyList<FieldChange>? Meanwhile { get; private set; }

    /// <summary>Someone else took it out meanwhile: what was typed can be read, and is not saved any more.</summary>
    public Refusal? Gone { get; private set; }

    /// <summary>Names of the ids and codes in the form, as it offered them at any time since it opened.</summary>
    public IReadOnlyDictionary<object, string> Known => _names;

    protected virtual IEnumerable<(object Key, string Name)> Names => [];

    protected override async Task OnInitializedAsync()
    {
        Submission = new(Rules);
        Input = await ReadAsync();
        if (Input is null)
            Navigation.NotFound();
        else
            _opened = EditMerge.Snapshot(Input);
    }

    public async Task SaveAsync()
    {
        if (Input is null)
            return;
        string? next = null;
        if (await Submission.SendAsync(Input, async key => next = await KeepAsync(key, Input)))
        {
            GoTo(next!);
            return;
        }
        Input.Retire = false;
        if (Submission.WasOvertaken)
            await LookAgainAsync(Input);
        StateHasChanged();
    }

    public Task RetireAsync()
    {
        Input!.Retire = true;
        return SaveAsync();
    }

    public void TakeTheirs(FieldChange change)
    {
        change.TakeTheirs();
        Meanwhile = [.. Meanwhile!.Where(c => c != change)];
        StateHasChanged();
    }

    /// <summary>A new form, or the row as it stands; null where there is none for this person.</summary>
    protected abstract Task<TInput?> OpenAsync();

    /// <returns>Where to go next.</returns>
    protected abstract Task<string> KeepAsync(Guid key, TInput input);

    protected virtual void GoTo(string next) => Navigation.NavigateTo(next);

    private async Task LookAgainAsync(TInput typed)
    {
        if (await ReadAsync() is { } saved)
        {
            Meanwhile = EditMerge.MergeChanges(_opened!, saved, typed);
            _opened = saved;
        }
        else
            Gone = new Refusal(
                "Someone else took this out meanwhile, so it cannot be changed any more. What you typed is still here to read."
            );
    }

    private async Task<TInput?> ReadAsync()
    {
        var read = await OpenAsync();
        foreach (var (key, name) in Names)
            _names[key] = name;
        return read;
    }
}

/// <summary>What a form of the practice sends: it knows the row it opened on. Every field of it has a <see cref="FieldAttribute"/>, so that two edits can be put together.</summary>
public interface IEditInput
{
    /// <summary>Of the row the form opened on; 0 for a new one.</summary>
    uint Version { get; set; }

    /// <summary>Take it out of use; what it was used for stays.</summary>
    bool Retire { get; set; }
}

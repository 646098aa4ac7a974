using FluentValidation.Results;
using HairClinic.Web.Data.Photos;
using Microsoft.AspNetCore.Components;
using NodaTime.Text;

namespace HairClinic.Web.Features.Clients;

public sealed partial class PhotosPage
{
    private const string Share = "share";
    private const string Hide = "hide";
    private const string Remove = "remove";
    private const string TooLarge = "A photo has at most 15 megabytes. Send this one smaller.";

    private Photos.Screen? _screen;
    private ValidationResult? _check;
    private Refusal? _refused;

    [Parameter]
    public Guid ClientId { get; set; }

    [SupplyParameterFromQuery]
    public Guid? Before { get; set; }

    /// <summary>Only those that show this unit, and a new one names it.</summary>
    [SupplyParameterFromQuery]
    public Guid? Unit { get; set; }

    /// <summary>A new one names this visit.</summary>
    [SupplyParameterFromQuery]
    public Guid? Visit { get; set; }

    private Photos.UnitChoice? Shown => _screen?.Units.FirstOrDefault(u => u.Id == Unit);

    [SupplyParameterFromForm(FormName = "add-photo")]
    public Guid Key { get; set; }

    [SupplyParameterFromForm(FormName = "add-photo")]
    public IFormFile? Picture { get; set; }

    [SupplyParameterFromForm(FormName = "add-photo")]
    public AddFields? Add { get; set; }

    [SupplyParameterFromForm]
    public ChangeFields? Change { get; set; }

    protected override async Task OnInitializedAsync()
    {
        if (Key == Guid.Empty)
            Key = Guid.CreateVersion7();
        _screen = await Slice.OpenAsync(ClientId, Before, Unit, CancellationToken.None);
        if (_screen is null)
            Navigation.NotFound();
    }

    private async Task AddAsync()
    {
        var input = new Photos.Input
        {
            ClientId = ClientId,
            Kind = Add?.Kind ?? PhotoKind.Other,
            TakenOn = LocalDatePattern.Iso.Parse(Add?.TakenOn ?? "") is { Success: true } day ? day.Value : null,
            UnitId = Add?.UnitId,
            VisitId = Add?.VisitId,
            Agreed = Add?.Agreed == true,
            Share = Add?.Share == true,
        };
        _check = Rules.Validate(input);
        if (Picture is not { Length: > 0 })
            _check.Errors.Add(new(nameof(Picture), "Choose a picture."));
        else if (Picture.Length > PhotoCompressor.MostBytes)
            _check.Errors.Add(new(nameof(Picture), TooLarge));
        if (!_check.IsValid)
            return;
        await TryAsync(async () =>
        {
            await using var file = Picture!.OpenReadStream();
            await Slice.AddAsync(Key, input, file, CancellationToken.None);
        });
    }

    private Task ChangeAsync() =>
        TryAsync(() =>
            Change?.What switch
            {
                Share => Slice.SetSharedAsync(ClientId, Change.PhotoId, shared: true, CancellationToken.None),
                Hide => Slice.SetSharedAsync(ClientId, Change.PhotoId, shared: false, CancellationToken.None),
                Remove => Slice.RemoveAsync(ClientId, Change.PhotoId, CancellationToken.None),
                _ => Task.CompletedTask,
            }
        );

    // Answers a sent form with the page anew, so that going back or reloading sends nothing twice.
    private async Task TryAsync(Func<Task> action)
    {
        try
        {
            await action();
            Navigation.NavigateTo($"/clients/{ClientId}/photos" + (Unit is null ? "" : $"?unit={Unit}"));
        }
        catch (Refusal refusal)
        {
            _refused = refusal;
        }
    }

    public sealed class AddFields
    {
        public PhotoKind Kind { get; set; }
        public string? TakenOn { get; set; }
        public Guid? UnitId { get; set; }
        public Guid? VisitId { get; set; }
        public bool Agreed { get; set; }
        public bool Share { get; set; }
    }

    public sealed class ChangeFields
    {
        public Guid PhotoId { get; set; }
        public string? What { get; set; }
    }
}

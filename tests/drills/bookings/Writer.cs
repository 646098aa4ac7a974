using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Features.Wear;
using NodaTime;
using NodaTime.Text;

namespace HairClinic.BookingDrill;

/// <summary>One writer of those in process: a desk, a client on their own page, or a client whose edge came up.</summary>
internal sealed class Writer(Clinic clinic, Ledger ledger, Looker looker, int seed, CancellationToken giveUp)
{
    private const int Days = 10;
    private readonly Random _random = new(seed);
    private readonly Sender _sender = new(ledger, new Random(-seed - 1), giveUp);

    public Task DeskAsync() =>
        _random.Next(10) switch
        {
            < 5 => BookAsync(Pick(clinic.Shared)),
            < 6 => BookOfferedAsync(Pick(clinic.Shared)),
            < 8 => MoveAsync(),
            _ => CallOffAsync(),
        };

    public Task OwnAsync()
    {
        var client = _random.Next(3) == 0 ? Pick(clinic.Shared) : Pick(clinic.Alone);
        return _random.Next(10) switch
        {
            < 6 => ChooseAsync(client, Pick(clinic.Services), at: null),
            < 8 => MoveMineAsync(client),
            _ => CallOffMineAsync(client),
        };
    }

    public async Task LiftAsync()
    {
        var (client, key) = (Pick(clinic.Alone), Guid.CreateVersion7());
        var told = await _sender.SendAsync(
            nameof(MyBondHasLifted),
            () =>
                clinic.UseAsync<MyBondHasLifted, MyBondHasLifted.Outcome>(
                    clinic.Acting(client),
                    s =>
                        s.SaveAsync(
                            new()
                            {
                                Key = key,
                                LiftedSince = SinceWhen.NotKnown,
                                Zone = LiftZone.Front,
                            },
                            CancellationToken.None
                        )
                )
        );
        if (told is not null)
            Acknowledge(key, new(nameof(MyBondHasLifted), client.Id, Visit: null, Start: null));
        var screen = await _sender.SendAsync(
            "looked at lift slots",
            () => clinic.UseAsync<MyBondHasLifted, MyBondHasLifted.Screen?>(clinic.Acting(client), s => s.OpenAsync(CancellationToken.None))
        );
        var fix = clinic.Services.First(s => s.Purpose == ServicePurpose.FixLift);
        if (screen is { Slots.Count: > 0 })
            await ChooseAsync(client, fix, Pick(screen.Slots).StartsAt, "lift slot");
        // A lift is booked as soon as can be, and told of once a bond: room and bond for the next are made here.
        await CallOffMineAsync(client);
        await looker.MendLiftAsync(client.Id);
    }

    private async Task BookAsync(Client client)
    {
        var service = Pick(clinic.Services);
        if (_random.Next(2) == 0)
        {
            await BookAsync(client, service, Pick(clinic.AllChairs).Id, Pick(clinic.People).Id, AnyStart());
            return;
        }
        var steps = service.Steps.OrderBy(s => s.Position).Select(s => new ServiceSegment(s.Kind, s.Minutes));
        var ask = new SlotRequest(clinic.Salon.Id, clinic.Salon.TimeZone, service.Id, [.. steps], AnyDay(), WithinDays: 1)
        {
            ClientId = client.Id,
        };
        var offers = await _sender.SendAsync(
            "looked for slots",
            () => clinic.UseAsync<SlotSearch, IReadOnlyList<SlotOffer>>(clinic.Desk, s => s.FindAsync(ask, CancellationToken.None))
        );
        if (offers is { Count: > 0 })
        {
            var offer = Pick(offers);
            await BookAsync(client, service, offer.ChairId, offer.PersonId, offer.StartsAt);
        }
    }

    // As the due list offers it.
    private async Task BookOfferedAsync(Client client)
    {
        var offers = await _sender.SendAsync(
            "looked at offers",
            () =>
                clinic.UseAsync<OfferSlots, IReadOnlyList<OfferSlots.Offer>>(
                    clinic.Desk,
                    s => s.OpenAsync(client.Id, CancellationToken.None)
                )
        );
        if (offers is not { Count: > 0 })
            return;
        var words = Pick(offers)
            .Href.Split('?', '&')
            .Where(p => p.Contains('=', StringComparison.Ordinal))
            .ToDictionary(p => p.Split('=')[0], p => p.Split('=')[1]);
        var service = clinic.Services.FirstOrDefault(s => s.Id == Guid.Parse(words["service"]));
        if (service is not null)
            await BookAsync(
                client,
                service,
                Guid.Parse(words["chair"]),
                Pick(clinic.People).Id,
                InstantPattern.General.Parse(words["start"]).Value
            );
    }

    private async Task BookAsync(Client client, ServiceKind service, Guid chair, Guid person, Instant start)
    {
        var key = Booking(client);
        var input = new BookVisit.Input
        {
            SalonId = clinic.Salon.Id,
            ClientId = client.Id,
            ServiceKindId = service.Id,
            ChairId = chair,
            PersonId = person,
            StartsAt = start,
            DespiteDoubts = true,
        };
        var outcome = await _sender.SendAsync(
            nameof(BookVisit),
            () => clinic.UseAsync<BookVisit, BookVisit.Outcome>(clinic.Desk, s => s.SaveAsync(key, input, CancellationToken.None))
        );
        if (outcome?.Booked is { } booked)
        {
            ledger.Placed[key] = (booked.VisitId, booked.StartsAt);
            Acknowledge(key, new(nameof(BookVisit), client.Id, booked.VisitId, booked.StartsAt));
        }
        else if (outcome?.Taken is { } taken)
            ledger.Count($"{nameof(BookVisit)} taken: {taken.By}");
    }

    private async Task MoveAsync()
    {
        if (await looker.AnyVisitAsync(_random.Next(2) == 0 ? Pick(clinic.Shared).Id : null, clinic.Shared) is not { } found)
            return;
        var screen = await _sender.SendAsync(
            "looked at a visit",
            () => clinic.UseAsync<MoveVisit, MoveVisit.Screen?>(clinic.Desk, s => s.OpenAsync(found.Visit, CancellationToken.None))
        );
        if (screen is not { IsOpen: true })
            return;
        var (key, start) = (Guid.CreateVersion7(), AnyStart());
        var input = new MoveVisit.Input
        {
            VisitId = found.Visit,
            Version = screen.Version,
            ChairId = Pick(clinic.AllChairs).Id,
            PersonId = Pick(clinic.People).Id,
            StartsAt = start,
            DespiteDoubts = true,
        };
        ledger.Placed[key] = (found.Visit, start);
        var outcome = await _sender.SendAsync(
            nameof(MoveVisit),
            () => clinic.UseAsync<MoveVisit, MoveVisit.Outcome>(clinic.Desk, s => s.SaveAsync(key, input, CancellationToken.None))
        );
        if (outcome?.Moved is not null)
            Acknowledge(key, new(nameof(MoveVisit), found.Client, found.Visit, start));
        else if (outcome?.Taken is { } taken)
            ledger.Count($"{nameof(MoveVisit)} taken: {taken.By}");
    }

    private async Task CallOffAsync()
    {
        if (await looker.AnyVisitAsync(null, clinic.Shared) is not { } found)
            return;
        var screen = await _sender.SendAsync(
            "looked at a visit",
            () => clinic.UseAsync<CallOff, CallOff.Screen?>(clinic.Desk, s => s.OpenAsync(found.Visit, CancellationToken.None))
        );
        if (screen is not { IsOpen: true })
            return;
        var key = Guid.CreateVersion7();
        var input = new CallOff.Input
        {
            VisitId = found.Visit,
            Version = screen.Version,
            By = CalledOffBy.Client,
        };
        if (
            await _sender.SendAsync(
                nameof(CallOff),
                () => clinic.UseAsync<CallOff, CallOff.Outcome>(clinic.Desk, s => s.SaveAsync(key, input, CancellationToken.None))
            )
            is not null
        )
            Acknowledge(key, new(nameof(CallOff), found.Client, found.Visit, Start: null, CalledOff: true));
    }

    private async Task ChooseAsync(Client client, ServiceKind service, Instant? at, string? from = null)
    {
        var actor = clinic.Acting(client);
        if (at is null && _random.Next(2) == 0)
        {
            var screen = await _sender.SendAsync(
                "looked at own times",
                () =>
                    clinic.UseAsync<ChooseATime, ChooseATime.Screen?>(
                        actor,
                        s => s.OpenAsync(service.Id, AnyDay(), null, CancellationToken.None)
                    )
            );
            if (screen is not { Slots.Count: > 0 })
                return;
            at = Pick(screen.Slots).StartsAt;
        }
        var (key, start) = (Booking(client), at ?? AnyStart());
        var outcome = await _sender.SendAsync(
            nameof(ChooseATime),
            () =>
                clinic.UseAsync<ChooseATime, SelfBookingOutcome>(
                    actor,
                    s =>
                        s.SaveAsync(
                            new()
                            {
                                Key = key,
                                Service = service.Id,
                                At = start,
                            },
                            CancellationToken.None
                        )
                )
        );
        if (outcome?.At is not null)
        {
            Acknowledge(key, new(nameof(ChooseATime), client.Id, Visit: null, start));
            if (from is not null)
                ledger.Count($"{from} booked");
        }
        else if (outcome is not null)
            ledger.Count($"{nameof(ChooseATime)} taken: {(outcome.Own is null ? "by others" : "own visit")}");
    }

    private async Task MoveMineAsync(Client client)
    {
        if (await looker.AnyVisitAsync(client.Id, []) is not { } found)
            return;
        var actor = clinic.Acting(client);
        var screen = await _sender.SendAsync(
            "looked at own visit",
            () => clinic.UseAsync<MoveMyTime, MoveMyTime.Screen?>(actor, s => s.OpenAsync(found.Visit, AnyDay(), CancellationToken.None))
        );
        if (screen is not { MayChange: true })
            return;
        var (key, start) = (
            Guid.CreateVersion7(),
            screen.Slots.Count > 0 && _random.Next(2) == 0 ? Pick(screen.Slots).StartsAt : AnyStart()
        );
        ledger.Placed[key] = (found.Visit, start);
        var outcome = await _sender.SendAsync(
            nameof(MoveMyTime),
            () =>
                clinic.UseAsync<MoveMyTime, SelfBookingOutcome?>(
                    actor,
                    s =>
                        s.SaveAsync(
                            new()
                            {
                                Key = key,
                                Visit = found.Visit,
                                Version = screen.Version,
                                At = start,
                            },
                            CancellationToken.None
                        )
                )
        );
        if (outcome?.At is not null)
            Acknowledge(key, new(nameof(MoveMyTime), client.Id, found.Visit, start));
        else if (outcome is not null)
            ledger.Count($"{nameof(MoveMyTime)} taken");
    }

    private async Task CallOffMineAsync(Client client)
    {
        if (await looker.AnyVisitAsync(client.Id, []) is not { } found)
            return;
        var actor = clinic.Acting(client);
        var screen = await _sender.SendAsync(
            "looked at own visit",
            () => clinic.UseAsync<CallOffMyTime, CallOffMyTime.Screen?>(actor, s => s.OpenAsync(found.Visit, CancellationToken.None))
        );
        if (screen is not { MayChange: true })
            return;
        var key = Guid.CreateVersion7();
        var input = new CallOffMyTime.Input
        {
            Key = key,
            Visit = found.Visit,
            Version = screen.Version,
        };
        if (
            await _sender.SendAsync(
                nameof(CallOffMyTime),
                () => clinic.UseAsync<CallOffMyTime, CallOffMyTime.Outcome?>(actor, s => s.SaveAsync(input, CancellationToken.None))
            )
            is not null
        )
            Acknowledge(key, new(nameof(CallOffMyTime), client.Id, found.Visit, Start: null, CalledOff: true));
    }

    private Guid Booking(Client client)
    {
        var key = Guid.CreateVersion7();
        ledger.Bookings[key] = client.Id;
        return key;
    }

    private void Acknowledge(Guid key, Act act)
    {
        ledger.Acknowledged[key] = act;
        ledger.Count(act.Deed);
    }

    private T Pick<T>(IReadOnlyList<T> of) => of[_random.Next(of.Count)];

    private LocalDate AnyDay() => clinic.Salon.DayOf(SystemClock.Instance.GetCurrentInstant()).PlusDays(2 + _random.Next(Days));

    // Bookings by hand may lie on a day on which the salon is closed: the desk insists.
    private Instant AnyStart() =>
        (AnyDay() + new LocalTime(9, 0)).InZoneLeniently(clinic.Salon.TimeZone).ToInstant() + Duration.FromMinutes(15 * _random.Next(32));
}

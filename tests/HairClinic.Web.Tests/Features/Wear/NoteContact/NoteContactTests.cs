using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Wear;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Wear.NoteContact;

namespace HairClinic.Web.Tests.Features.Wear.NoteContact;

public sealed class NoteContactTests(PgServer server)
{
    private readonly DueList _list = new();
    private Client _client = null!;

    [Fact]
    public async Task Having_rung_is_seen_in_the_row_and_leaves_it_on_the_list()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, new() { ClientId = _client.Id, Kind = ContactOutcome.RangNoAnswer });

        var row = Assert.Single((await _list.OpenAsync(clinic)).Rows);
        Assert.Equal((ContactOutcome.RangNoAnswer, TestClinic.UsualNow), (row.LastContact!.Kind, row.LastContact.At));
    }

    [Fact]
    public async Task Put_off_to_a_day_takes_them_off_the_list_until_then()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, PutOff(7));

        Assert.Empty((await _list.OpenAsync(clinic)).Rows);
        clinic.Clock.AdvanceDays(7);
        var row = Assert.Single((await _list.OpenAsync(clinic)).Rows);
        Assert.Equal("Away", row.LastContact!.Reason);
    }

    [Theory]
    [InlineData(0, "Put off to a day after today.")]
    [InlineData(-3, "Put off to a day after today.")]
    [InlineData(183, "Put off by 26 weeks at most.")]
    public async Task A_put_off_lies_between_tomorrow_and_half_a_year(int days, string refusal)
    {
        await using var clinic = await OpenAsync();

        var refused = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, PutOff(days)));

        Assert.Equal(refusal, refused.Message);
        Assert.Single((await _list.OpenAsync(clinic)).Rows);
    }

    [Fact]
    public async Task A_lifted_bond_is_not_put_off()
    {
        await using var clinic = await OpenAsync(bond => bond.ReportLift(new(_list.Today, null, null, false)));

        var refused = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, PutOff(7)));

        Assert.Equal("Their bond has lifted: book them instead of putting them off.", refused.Message);
    }

    [Fact]
    public async Task A_client_of_a_salon_one_does_not_work_in_is_not_there()
    {
        await using var clinic = await OpenAsync(salon: () => _list.Quayside);

        var refused = await Assert.ThrowsAsync<Refusal>(() =>
            SaveAsync(clinic, new() { ClientId = _client.Id, Kind = ContactOutcome.Rang })
        );

        Assert.Equal("This client is not in the book.", refused.Message);
    }

    [Fact]
    public async Task The_same_tap_sent_four_times_is_one_note()
    {
        await using var clinic = await OpenAsync();
        var (key, input) = (Guid.CreateVersion7(), new Slice.Input { ClientId = _client.Id, Kind = ContactOutcome.Rang });

        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => SaveAsync(clinic, input, key)));

        Assert.Single(answers.Distinct());
        Assert.Equal(1, await clinic.ReadAsync(db => db.ContactNotes.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Noting_takes_two_round_trips()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, new() { ClientId = _client.Id, Kind = ContactOutcome.Messaged });

        Assert.Equal(2, clinic.Commands.All.Count);
    }

    [Theory]
    [InlineData(ContactOutcome.PutOff, null, "", 2)]
    [InlineData(ContactOutcome.PutOff, 3, " ", 1)]
    [InlineData(ContactOutcome.PutOff, 3, "Away", 0)]
    [InlineData(ContactOutcome.Rang, null, "", 0)]
    public void A_put_off_says_until_when_and_why(ContactOutcome kind, int? inDays, string reason, int errors)
    {
        var input = new Slice.Input
        {
            Kind = kind,
            Until = inDays is { } days ? _list.Today.PlusDays(days) : null,
            Reason = reason,
        };

        Assert.Equal(errors, new NoteContactRules().Validate(input).Errors.Count);
    }

    private Slice.Input PutOff(int days) =>
        new()
        {
            ClientId = _client.Id,
            Kind = ContactOutcome.PutOff,
            Until = _list.Today.PlusDays(days),
            Reason = "Away",
        };

    private async Task<TestClinic> OpenAsync(Action<Bond>? then = null, Func<Salon>? salon = null) =>
        await TestClinic.OpenAsync(
            server,
            _list.Lay(l =>
            {
                (_client, var bond) = l.Bonded("C-1", 40, salon?.Invoke());
                then?.Invoke(bond);
            })
        );

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_list.Desk, _list.ElmRow),
            slice => slice.SaveAsync(key ?? Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
        );
}

using HairClinic.Web.Features.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Wear.Due;

/// <summary>How far the list reaches: pages, salons, practices, days; and what it costs.</summary>
public sealed class DuePagesTests(PgServer server)
{
    private readonly DueList _list = new();

    [Fact]
    public async Task Page_by_page_everyone_comes_once_and_in_order()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _list.Lay(l =>
            {
                for (var i = 0; i < 60; i++)
                    l.Lifted($"L{i:00}", 30 + i % 5, 1);
                for (var i = 0; i < 65; i++)
                    l.Bonded($"W{i:00}", 30 + i % 4, spare: null);
            })
        );
        List<DueRow> seen = [];
        List<int> sizes = [];
        DueCursor? after = null;
        do
        {
            var page = await _list.OpenAsync(clinic, DuePart.All, after is null ? null : DueCursor.Parse(after.ToString()));
            (seen, after) = ([.. seen, .. page.Rows], page.Next);
            sizes.Add(page.Rows.Count);
        } while (after is not null);

        Assert.Equal([50, 50, 25], sizes);
        Assert.Equal(seen.Count, seen.DistinctBy(r => r.BondId).Count());
        Assert.Equal(seen.OrderBy(r => r.Rank).ThenBy(r => r.ClosesOn).ThenBy(r => r.BondId), seen);
    }

    [Fact]
    public async Task The_list_is_of_the_salon_one_is_at_or_of_all_ones_own_and_never_of_others()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _list.Lay(l =>
            {
                l.Bonded("elm", 40);
                l.Bonded("quay", 41, l.Quayside);
            })
        );

        Assert.Equal(["elm"], DueList.Codes(await _list.OpenAsync(clinic, salons: [_list.ElmRow, _list.Quayside])));
        Assert.Equal(
            ["quay", "elm"],
            DueList.Codes(await _list.OpenAsync(clinic, allSalons: true, salons: [_list.ElmRow, _list.Quayside]))
        );
        Assert.Equal(["elm"], DueList.Codes(await _list.OpenAsync(clinic, allSalons: true, salons: [_list.ElmRow])));
    }

    [Fact]
    public async Task Another_practices_clients_are_not_on_it()
    {
        await using var theirs = await TestClinic.OpenAsync(server, new DueList().Lay(l => l.Bonded("theirs", 40)));
        await using var ours = await TestClinic.OpenAsync(server, _list.Lay(l => l.Bonded("ours", 41)));

        Assert.Equal(["ours"], DueList.Codes(await _list.OpenAsync(ours)));
    }

    [Fact]
    public async Task Whoever_left_or_was_folded_into_another_record_is_not_on_it()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _list.Lay(l =>
            {
                l.Bonded("left", 40).Client.Leave(l.Today);
                var kept = l.Bonded("kept", 41).Client;
                l.Bonded("folded", 42).Client.MergeInto(kept);
            })
        );

        Assert.Equal(["kept"], DueList.Codes(await _list.OpenAsync(clinic)));
    }

    // Ten in the evening in London on 3 February 2027 is eleven in the morning of the 4th in Auckland (UTC+13 in summer: IANA).
    [Fact]
    public async Task Each_salons_clients_are_judged_by_the_day_it_is_there()
    {
        var evening = Instant.FromUtc(2027, 2, 3, 22, 0);
        var late = new DueList(evening);
        await using var clinic = await TestClinic.OpenAsync(
            server,
            late.Lay(
                l =>
                {
                    l.Bonded("London", 42);
                    l.Bonded("Auckland", 42, l.Quayside);
                },
                quaysideZone: "Pacific/Auckland"
            ),
            evening
        );

        var both = await late.OpenAsync(clinic, allSalons: true, salons: [late.ElmRow, late.Quayside]);

        Assert.Equal(1, both.Counts.CountOf(DuePart.Overdue));
        Assert.Equal(
            ["Auckland"],
            DueList.Codes(await late.OpenAsync(clinic, DuePart.Overdue, allSalons: true, salons: [late.ElmRow, late.Quayside]))
        );
        Assert.Equal(
            ["London"],
            DueList.Codes(await late.OpenAsync(clinic, DuePart.Open, allSalons: true, salons: [late.ElmRow, late.Quayside]))
        );
        Assert.Equal(2, both.Rows.Count);
    }

    [Theory]
    [InlineData("")]
    [InlineData("2_2027-02-03_01948b0c9f4b7c3e8a55d7c7a1b2c3d4")]
    [InlineData("1_2027-02-30_01948b0c9f4b7c3e8a55d7c7a1b2c3d4")]
    [InlineData("1_2027-02-03_x")]
    public void An_address_that_was_mistyped_starts_from_the_beginning(string text) => Assert.Null(DueCursor.Parse(text));

    [Theory]
    [InlineData(DuePart.All)]
    [InlineData(DuePart.Booked)]
    public async Task The_list_takes_four_round_trips_however_long_it_is(DuePart part)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _list.Lay(l =>
            {
                for (var i = 0; i < 80; i++)
                    l.PutOff(l.Bonded($"C{i:00}", 30).Client, i % 2);
            })
        );

        await _list.OpenAsync(clinic, part);

        Assert.Equal(4, clinic.Commands.All.Count);
    }
}

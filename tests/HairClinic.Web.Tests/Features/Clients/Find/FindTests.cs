using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using Slice = HairClinic.Web.Features.Clients.Find;

namespace HairClinic.Web.Tests.Features.Clients.Find;

public sealed class FindTests(PgServer server)
{
    private readonly ClientScene _given = new();

    [Theory]
    [InlineData("ávalos")]
    [InlineData("QUI")]
    [InlineData("nur aval")]
    [InlineData("C-7")]
    [InlineData("c7")]
    [InlineData("0007")]
    [InlineData("01632 960007")]
    [InlineData("+44 1632 960007")]
    [InlineData("nuria 0007")]
    [InlineData("C-7-1")]
    public async Task A_client_is_found_by_name_code_phone_and_serial_however_it_is_typed(string typed)
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LaySome));

        var found = await FindAsync(clinic, typed);

        Assert.Equal(["C-7"], found.Rows.Select(r => r.Code));
    }

    [Theory]
    [InlineData("nuria larch")]
    [InlineData("uria")]
    [InlineData("960007 larch")]
    [InlineData("%")]
    [InlineData("_")]
    [InlineData("   ")]
    public async Task Every_word_must_match_from_its_beginning(string typed)
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LaySome));

        Assert.Empty((await FindAsync(clinic, typed)).Rows);
    }

    [Fact]
    public async Task An_exact_code_comes_first_and_leads_straight_there()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                g.Scene.AddClient("B-10", "Ada Aaron", g.Here);
                g.Scene.AddClient("B-1", "Zoe Zimmer", g.Here);
            })
        );

        var found = await FindAsync(clinic, "b-1");

        Assert.Equal(["B-1", "B-10"], found.Rows.Select(r => r.Code));
        Assert.Equal("B-1", found.Straight!.Code);
    }

    [Fact]
    public async Task A_code_that_is_also_the_serial_of_someone_elses_unit_leads_to_both()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                g.Scene.AddClient("A-1-1", "Bo Larch", g.Here);
                g.Scene.AddUnit(g.Scene.AddClient("A-1", "Ada Fenwick", g.Here), g.Lace, g.Today);
            })
        );

        var found = await FindAsync(clinic, "A-1-1");

        Assert.Equal(["A-1", "A-1-1"], found.Rows.Select(r => r.Code).Order());
        Assert.Null(found.Straight);
    }

    [Theory]
    [InlineData("ada", "Ada Moss")]
    [InlineData("ada", "Bo Larch")]
    public async Task What_is_found_is_the_same_whoever_another_salon_knows(string typed, string there)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                g.Scene.AddClient("C-1", "Ada Fenwick", g.Here);
                g.Scene.AddClient("C-2", there, g.There);
            })
        );

        var found = await FindAsync(clinic, typed);

        Assert.Equal("C-1", Assert.Single(found.Rows).Code);
        Assert.True(found.HasOtherSalons);
    }

    [Fact]
    public async Task That_somebody_may_be_known_elsewhere_is_said_where_there_are_salons_one_does_not_see()
    {
        Person both = null!;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g => both = g.Scene.Hire("Both", StaffRole.FrontDesk, g.Here, g.There))
        );
        var owner = _given.Of(StaffRole.Owner);

        Assert.True((await FindAsync(clinic, "nobody")).HasOtherSalons);
        Assert.False((await FindAsync(clinic, "nobody", clinic.Acting(owner))).HasOtherSalons);
        Assert.False((await FindAsync(clinic, "nobody", clinic.Acting(both, _given.Here, _given.There))).HasOtherSalons);
    }

    [Theory]
    [InlineData("518 555 0146")]
    [InlineData("(518) 555-0146")]
    [InlineData("1 518 555 0146")]
    [InlineData("0146")]
    [InlineData("00 1 518 555 0146")]
    public async Task A_number_of_another_country_is_found_however_it_is_written(string typed)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g => g.Scene.AddClient("C-7", "Nuria Ávalos", g.Here, "+15185550146"))
        );

        Assert.Equal("C-7", Assert.Single((await FindAsync(clinic, typed)).Rows).Code);
    }

    [Fact]
    public async Task A_number_is_read_with_the_prefixes_of_the_salons_own_country()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g => g.Scene.AddClient("C-7", "Nuria Ávalos", g.Here, "+442079460018"))
        );

        Assert.Equal("C-7", Assert.Single((await FindAsync(clinic, "+44 (0)20 7946 0018")).Rows).Code);
    }

    [Fact]
    public async Task More_than_twenty_are_cut_and_said_to_be()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                for (var i = 0; i < 25; i++)
                    g.Scene.AddClient($"K-{i}", $"Ada Number{i}", g.Here);
            })
        );

        var found = await FindAsync(clinic, "ada");

        Assert.Equal((20, true), (found.Rows.Count, found.IsCut));
    }

    [Fact]
    public async Task A_result_says_when_the_rebond_is_due_and_that_a_lift_is_known()
    {
        Domain.Bonding.Bond bond = null!;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                (_, _, bond) = g.Wearing("C-1", "Ada Fenwick", 10);
                bond.ReportLift(new Domain.Bonding.Lift(g.Today, null, null, SpotFixed: false));
            })
        );

        var row = Assert.Single((await FindAsync(clinic, "ada")).Rows);

        Assert.Equal((bond.DueOn, true, "Elm Row"), (row.DueOn, row.Lifted, row.Salon));
    }

    [Fact]
    public async Task A_unit_of_nobodys_is_named_by_its_serial()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                var unit = new HairSystem(Guid.CreateVersion7(), "STOCK-4", clientId: null, g.Lace.Id, g.Today);
                g.Scene.Db.HairSystems.Add(unit);
                g.Scene.Db.FindWords.Add(FindWordIndexer.For(unit));
            })
        );

        Assert.Equal("STOCK-4", Assert.Single((await FindAsync(clinic, "stock4")).Units).Serial);
    }

    [Fact]
    public async Task Finding_takes_two_round_trips_and_no_pattern()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LaySome));

        await FindAsync(clinic, "nuria 0007");

        Assert.Equal(2, clinic.Commands.All.Count);
        Assert.DoesNotContain(clinic.Commands.All, sql => sql.Contains("LIKE", StringComparison.OrdinalIgnoreCase));
    }

    private static void LaySome(ClientScene g)
    {
        var nuria = g.Scene.AddClient("C-7", "Nuria Ávalos-Quist", g.Here, "+441632960007");
        g.Scene.AddUnit(nuria, g.Lace, g.Today);
        g.Scene.AddClient("D-8", "Bo Larch", g.Here, "+441632960012");
    }

    [Fact]
    public async Task A_trainee_finds_the_clients_of_their_own_visits_by_name_and_is_told_so()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                LaySome(g);
                var mine = g.Scene.AddClient("E-9", "Ottoline Marsh", g.Here);
                g.Scene.Book(mine, g.Scene.Services[0], g.Chair, g.Of(StaffRole.Trainee), g.Scene.Now);
            })
        );
        var trainee = clinic.Acting(_given.Of(StaffRole.Trainee), _given.Here);

        var mine = await FindAsync(clinic, "ottol", trainee);
        var others = await FindAsync(clinic, "nuria", trainee);

        Assert.Equal(["E-9"], mine.Rows.Select(r => r.Code));
        Assert.Empty(others.Rows);
        Assert.Equal((true, false), (others.OwnVisitsOnly, others.HasOtherSalons));
        Assert.False((await FindAsync(clinic, "nuria")).OwnVisitsOnly);
    }

    private Task<Slice.Screen> FindAsync(TestClinic clinic, string typed, PersonActor? by = null) =>
        clinic.UseAsync<Slice, Slice.Screen>(
            by ?? clinic.Acting(_given.Desk, _given.Here),
            slice => slice.OpenAsync(typed, TestContext.Current.CancellationToken)
        );
}

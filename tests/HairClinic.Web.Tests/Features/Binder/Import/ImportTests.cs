using System.Text;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Binder.Import;

namespace HairClinic.Web.Tests.Features.Binder.Import;

public sealed class ImportTests(PgServer server)
{
    private static readonly Dictionary<SheetKind, byte[]> SmallBook = new()
    {
        [SheetKind.Clients] = Binders.Csv(
            "code,name,called,home salon,phone,preferred days,skin oiliness,swims per week",
            "C-1,Ada Fenwickson,Ada,Elm Row,01632 960001,Tue Thu,oily,1.5",
            "C-2,Núria Ávalos-Quist,,Kite Street,,,,"
        ),
        [SheetKind.Units] = Binders.Csv(
            "serial,client code,workshop,base,unit kind,state,ordered on,promised for,arrived on,accepted on,times remade,price,currency",
            "U-1,C-1,Workshop North,French lace,French lace cap,bonded,2026-09-01,2026-10-20 | 2026-11-03,2026-11-05,2026-11-06,1,950.00,GBP",
            "U-2,C-1,Workshop North,French lace,French lace cap,ordered,2026-12-01,2027-01-26,,,,,",
            "U-3,C-2,,Poly 0.10 mm and more,,resting,,,,,,,"
        ),
        [SheetKind.Bonds] = Binders.Csv(
            "serial,client code,applied on,applied at,adhesive,lot,coats,waits kept,removed on,removed because,lifted on,lift zone,last sound on,stylist",
            "U-1,C-1,2026-11-10,,Adhesive A,A1,3,yes,2026-12-08,scheduled,,,2026-12-08,Imre Castellan",
            "U-1,C-1,2026-12-08,14:30,Adhesive A,A1,3,no,2027-01-05,lifted,,temples,2026-12-20,Imre Castellan",
            "U-1,C-1,2027-01-05,11:00,Adhesive A,A2,3,yes,,,,,,Imre Castellan",
            "U-3,C-2,2026-10-01,,Tape T,,,,2026-10-20,lifted,2026-10-18,front,,"
        ),
        [SheetKind.Visits] = Binders.Csv(
            "client code,salon,date,start,minutes,service,chair,stylist,state,note",
            "C-1,Elm Row,2026-12-08,13:00,90,Rebond,Chair 1,Imre Castellan,done,",
            "C-1,Elm Row,2027-02-10,09:30,90,Rebond,Chair 1,Imre Castellan,booked,Bring the spare",
            "C-2,Kite Street,2026-10-01,09:30,,Wash and style,,,,"
        ),
    };

    [Fact]
    public async Task An_old_book_becomes_clients_units_bonds_and_visits_with_their_due_windows()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);

        await clinic.BringAllAsync(SmallBook);

        var open = await clinic.ReadAsync(db => db.Bonds.SingleAsync(b => b.RemovedOn == null, TestContext.Current.CancellationToken));
        // French lace holds 3 to 5 weeks by the practice's row (common practice, no source).
        Assert.Equal((new LocalDate(2027, 1, 26), new LocalDate(2027, 2, 9)), (open.OpensOn, open.ClosesOn));
        Assert.Equal(Instant.FromUtc(2027, 1, 5, 11, 0), open.AppliedAt);
        Assert.NotEmpty(open.DueReasons);
        var units = await clinic.ReadAsync(db =>
            db.HairSystems.Include(u => u.Promises).OrderBy(u => u.Serial).ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal([UnitState.Bonded, UnitState.Ordered, UnitState.Resting], units.Select(u => u.State));
        Assert.Equal(
            [new LocalDate(2026, 10, 20), new LocalDate(2026, 11, 3)],
            units[0].Promises.OrderBy(p => p.Number).Select(p => p.PromisedFor)
        );
        Assert.Equal((95_000, "GBP"), (units[0].PriceMinor, units[0].Currency));
        Assert.Equal([1, null, null], units.Select(u => u.RemadeTimes));
        Assert.Equal(new LocalDate(2026, 11, 10), units[0].Dates.FirstBondedOn);
        var visits = await clinic.ReadAsync(db => db.Visits.OrderBy(v => v.StartsAt).ToListAsync(TestContext.Current.CancellationToken));
        Assert.Equal([VisitState.Done, VisitState.Done, VisitState.Booked], visits.Select(v => v.State));
        // Nine thirty in New York in October is thirteen thirty in universal time.
        Assert.Equal(Instant.FromUtc(2026, 10, 1, 13, 30), visits[0].StartsAt);
        Assert.Equal(Duration.FromMinutes(45), visits[0].EndsAt - visits[0].StartsAt);
    }

    [Fact]
    public async Task A_lift_whose_day_nobody_knows_stays_unknown_between_the_last_sound_day_and_the_take_down()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);

        await clinic.BringAllAsync(SmallBook);

        var bonds = await clinic.ReadAsync(db => db.Bonds.OrderBy(b => b.AppliedOn).ToListAsync(TestContext.Current.CancellationToken));
        Assert.Equal(
            new Lift(new(2026, 10, 20), new LocalDate(2026, 10, 18), LiftZone.Front, SpotFixed: false),
            bonds[0].Lift! with
            {
                ReportedOn = new(2026, 10, 20),
            }
        );
        Assert.Null(bonds[1].Lift);
        Assert.Equal(new Lift(new(2027, 1, 5), null, LiftZone.Temples, SpotFixed: false), bonds[2].Lift);
        Assert.Equal(new LocalDate(2026, 12, 20), bonds[2].LastSoundOn);
    }

    [Fact]
    public async Task The_same_files_brought_again_change_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAllAsync(SmallBook);

        var again = await clinic.BringAllAsync(SmallBook);

        Assert.All(again, outcome => Assert.Equal((0, 0), (outcome.New, outcome.Changed)));
    }

    [Fact]
    public async Task The_same_tap_sent_twice_brings_the_file_once_and_gives_the_same_answer()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        var draft = Binders.Draft(SheetKind.Clients, SmallBook[SheetKind.Clients]);
        var key = Guid.CreateVersion7();

        var answers = await Task.WhenAll(clinic.BringAsync(draft, key), clinic.BringAsync(draft, key), clinic.BringAsync(draft, key));

        Assert.Single(answers.Distinct());
        Assert.Equal(2, answers[0].New);
        Assert.Equal(2, await clinic.ReadAsync(db => db.Clients.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task What_the_book_lacks_is_listed_and_made_only_when_a_person_says_so()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAsync(Binders.Draft(SheetKind.Clients, SmallBook[SheetKind.Clients]));
        var draft = Binders.Draft(SheetKind.Units, SmallBook[SheetKind.Units]);

        var missing = (await clinic.PreviewAsync(draft)).Missing;

        Assert.Equal(
            [
                new(MissingKind.Workshop, "Workshop North", 2),
                new(MissingKind.UnitKind, "French lace cap", 2),
                new(MissingKind.UnitKind, "Poly 0.10 mm and more", 1),
            ],
            missing
        );
        await Refused.SayingAsync(
            "The file names things the book does not have. Say that they may be created, or correct the file.",
            () =>
                clinic.UseAsync<Slice, Slice.Outcome>(
                    clinic.Job,
                    slice => slice.SaveAsync(Guid.CreateVersion7(), draft, createMissing: false, TestContext.Current.CancellationToken)
                )
        );
        Assert.Equal(0, await clinic.ReadAsync(db => db.Workshops.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task A_number_is_read_in_the_country_of_the_rows_own_home_salon()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Binders.TwoSalons(scene);
                scene.OpenSalon("Pier", "America/New_York", "USD", chairs: 1);
            }
        );

        await clinic.BringAsync(
            Binders.Draft(
                SheetKind.Clients,
                Binders.Csv("code,name,home salon,phone", "C-1,Ada Marrowby,Elm Row,01632 960001", "C-2,Bo Larch,pier,(518) 555-0146")
            )
        );

        var phones = await clinic.ReadAsync(db =>
            db.Clients.OrderBy(c => c.Code).Select(c => c.Phone).ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal(["+441632960001", "+15185550146"], phones);
    }

    [Fact]
    public async Task A_blank_cell_never_empties_what_the_book_knows_and_a_new_name_is_found_at_once()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAllAsync(SmallBook);

        var outcome = await clinic.BringAsync(
            Binders.Draft(SheetKind.Clients, Binders.Csv("code,name,home salon,phone", "C-1,Ada Marrowby,elm row,"))
        );

        Assert.Equal((0, 1, 0), (outcome.New, outcome.Changed, outcome.Unchanged));
        var client = await clinic.ReadAsync(db => db.Clients.SingleAsync(c => c.Code == "C-1", TestContext.Current.CancellationToken));
        Assert.Equal(("Ada Marrowby", "+441632960001"), (client.Name, client.Phone));
        var words = await clinic.ReadAsync(db =>
            db.FindWords.Where(w => w.SubjectId == client.Id).Select(w => w.Word).ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal(["100069236144", "ada", "c1", "marrowby"], words.Order());
    }

    [Fact]
    public async Task A_spreadsheet_in_windows_1252_with_semicolons_and_days_before_months_comes_in()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        var western = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;
        var file = western.GetBytes(
            "Código;Nombre;Salón;Fecha de nacimiento;Natación\r\nC-1;Núria Peña;Elm Row;13/05/1970;0,5\r\nC-2;Íñigo Ruíz;Elm Row;02/03/1981;\r\n\r\n"
        );

        var draft = Binders.Draft(SheetKind.Clients, file);
        await clinic.BringAsync(draft);

        Assert.Equal(
            (SheetEncoding.Windows1252, ';', DateOrder.DayMonthYear, DecimalMark.Comma),
            (draft.Sheet.Encoding, draft.Sheet.Separator, draft.DateOrder, draft.DecimalMark)
        );
        var clients = await clinic.ReadAsync(db =>
            db.Clients.Include(c => c.CareFacts).OrderBy(c => c.Code).ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal(
            ("Núria Peña", new LocalDate(1970, 5, 13), 0.5m),
            (clients[0].Name, clients[0].BirthDate, clients[0].CareFacts[0].Habits.SwimsPerWeek)
        );
        Assert.Equal(new LocalDate(1981, 3, 2), clients[1].BirthDate);
    }

    [Fact]
    public async Task A_visit_that_went_on_in_the_book_does_not_go_back_to_what_the_old_file_said()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAllAsync(SmallBook);
        await clinic.LayAsync(scene =>
        {
            var visit = scene.Db.Visits.Single(v => v.State == VisitState.Booked);
            visit.Arrive(visit.Day);
        });

        var again = await clinic.BringAsync(Binders.Draft(SheetKind.Visits, SmallBook[SheetKind.Visits]));

        Assert.Equal((0, 0, 3), (again.New, again.Changed, again.Unchanged));
    }

    [Fact]
    public async Task A_client_booked_in_two_places_at_once_is_a_problem_of_the_row_and_a_past_one_is_not()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAllAsync(SmallBook);

        var past = await clinic.BringAsync(
            Draft("C-1,Elm Row,2027-01-07,14:00,90,Rebond,booked", "C-1,Kite Street,2027-01-07,09:30,90,Rebond,booked")
        );
        var ahead = await clinic.PreviewAsync(
            Draft("C-1,Elm Row,2027-03-04,14:00,90,Rebond,booked", "C-1,Kite Street,2027-03-04,09:30,90,Rebond,booked")
        );
        var early = await clinic.PreviewAsync(Draft("C-1,Elm Row,2027-03-05,09:00,90,Rebond,arrived"));

        Assert.Equal(2, past.New);
        Assert.Equal(3, Assert.Single(ahead.Problems).Row);
        // What fails is not counted as new too.
        Assert.Equal(1, ahead.New);
        Assert.Equal(0, early.New);
        Assert.Single(early.Problems);

        // Half past nine in New York is half past two in London.
        static SheetDraft Draft(params string[] rows) =>
            Binders.Draft(SheetKind.Visits, Binders.Csv(["client code,salon,date,start,minutes,service,state", .. rows]));
    }

    [Fact]
    public async Task A_booked_visit_on_a_day_that_is_past_or_closed_comes_in_and_is_said_first()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAllAsync(SmallBook);
        // A Sunday, on which no salon of a test is open, a working Thursday, and days that are past.
        var report = await clinic.PreviewAsync(
            Binders.Draft(
                SheetKind.Visits,
                Binders.Csv(
                    "client code,salon,date,start,duration,service,state",
                    "C-1,Elm Row,2027-03-07,14:00,1h30,Rebond,booked",
                    "C-1,Elm Row,2027-03-11,14:00,1:30,Rebond,booked",
                    "C-1,Elm Row,2027-01-07,14:00,90 min,Rebond,booked",
                    "C-1,Elm Row,2027-01-10,14:00,90,Rebond,done"
                )
            )
        );

        Assert.Empty(report.Problems);
        Assert.Equal(4, report.New);
        Assert.Equal(
            ["2: Elm Row is closed on 2027-03-07.", "4: This visit is booked for 2027-01-07, which is past: did it take place?"],
            report.Doubts.Select(Binders.Told)
        );
    }

    [Fact]
    public void A_column_that_says_where_is_not_taken_for_where_a_bond_lifted() =>
        Assert.Null(
            Binders
                .Draft(SheetKind.Bonds, Binders.Csv("serial,client code,applied on,Where", "U-1,C-1,2027-01-05,Quayside"))
                .Mapping.HeaderOf(BondColumns.LiftZone)
        );

    [Fact]
    public async Task A_bond_that_was_open_is_ended_by_a_later_file()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAllAsync(SmallBook);

        var outcome = await clinic.BringAsync(
            Binders.Draft(
                SheetKind.Bonds,
                Binders.Csv("serial,client code,applied on,removed on,removed because", "U-1,C-1,2027-01-05,2027-02-02,scheduled")
            )
        );

        Assert.Equal((0, 1), (outcome.New, outcome.Changed));
        var unit = await clinic.ReadAsync(db => db.HairSystems.SingleAsync(u => u.Serial == "U-1", TestContext.Current.CancellationToken));
        Assert.Equal(UnitState.Resting, unit.State);
    }
}

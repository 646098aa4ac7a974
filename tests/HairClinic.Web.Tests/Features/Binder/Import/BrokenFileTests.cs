using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Binder.Sheets;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Features.Binder.Import;

public sealed class BrokenFileTests(PgServer server)
{
    private static readonly byte[] BrokenClients = Binders.Csv(
        "code,name,home salon,phone,email,birth date,swims per week",
        "C-1,Ada Fenwickson,Elm Row,01632 960001,ada@example.org,1970-05-04,2",
        "C-2,,Elm Row,,,,",
        "C-3,Bram Larkmoor,Nowhere Lane,,,,",
        "C-4,Carys Dunmarrow,Elm Row,12,,,",
        "C-5,Dilys Wetherdown,Elm Row,,not an address,,",
        "C-6,Edda Yarrowford,Elm Row,,,1970-02-30,",
        "C-7,Faye Zellenby,Elm Row,,,,99",
        "C-1,Gwen Birchwater,Elm Row,,,,",
        "C-9,too,many,cells,in,this,row,here"
    );

    [Fact]
    public async Task The_preview_names_every_row_that_will_fail_its_column_and_what_was_expected()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);

        var report = await clinic.PreviewAsync(Binders.Draft(SheetKind.Clients, BrokenClients));

        Assert.Equal(
            [
                "3 name “”: something: this column may not be blank",
                "4 home salon “Nowhere Lane”: a salon of this practice: Elm Row, Kite Street",
                "5 phone “12”: a phone number that exists, such as 0121 234 5678",
                "6 email “not an address”: one e-mail address, such as name@example.org",
                "7 birth date “1970-02-30”: a date that exists, written year, month, day, such as 2025-12-31",
                "8 swims per week “99”: a number from 0 to 50",
                "9 code “C-1”: a row of its own: the same one stands in row 2",
                "10: This row has 8 cells where 7 were expected. Put a cell that contains the separator in quotes.",
            ],
            report.Problems.Select(Binders.Told)
        );
        Assert.Equal(1, report.New);
    }

    [Fact]
    public async Task A_file_with_one_bad_row_writes_none_of_its_rows()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);

        await Refused.SayingAsync(
            "{0} rows cannot be brought. Nothing was written; look at the preview again.",
            () => clinic.BringAsync(Binders.Draft(SheetKind.Clients, BrokenClients))
        );

        Assert.Equal(0, await clinic.ReadAsync(db => db.Clients.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Looking_at_the_preview_writes_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        var file = Binders.Csv("code,name,home salon", "C-1,Ada Fenwickson,Elm Row");

        Assert.Equal(1, (await clinic.PreviewAsync(Binders.Draft(SheetKind.Clients, file))).New);

        Assert.Equal(0, await clinic.ReadAsync(db => db.Clients.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Rows_that_refer_to_what_is_not_there_are_told_so()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        var units = Binders.Csv(
            "serial,client code,base,retired on,arrived on",
            "U-1,C-9,French lace,,",
            "U-2,,French lace,2025-01-01,2026-01-01"
        );
        var bonds = Binders.Csv("serial,client code,applied on", "U-9,C-9,2026-01-01");
        var visits = Binders.Csv("client code,salon,date,start,service", "C-9,Elm Row,2026-01-06,09:30,Rebond");

        Assert.Equal(
            [
                "2 client code “C-9”: the code of a client in the book; bring the clients first",
                "3: Unit U-2 was retired before it was arrived.",
            ],
            (await clinic.PreviewAsync(Binders.Draft(SheetKind.Units, units))).Problems.Select(Binders.Told)
        );
        Assert.Equal(
            ["2 serial “U-9”: the serial of a unit in the book; bring the units first"],
            (await clinic.PreviewAsync(Binders.Draft(SheetKind.Bonds, bonds))).Problems.Select(Binders.Told)
        );
        Assert.Equal(
            ["2 client code “C-9”: the code of a client in the book; bring the clients first"],
            (await clinic.PreviewAsync(Binders.Draft(SheetKind.Visits, visits))).Problems.Select(Binders.Told)
        );
    }

    [Fact]
    public async Task Two_visits_on_one_chair_or_with_one_pair_of_hands_name_each_others_row()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAsync(
            Binders.Draft(
                SheetKind.Clients,
                Binders.Csv(
                    "code,name,home salon",
                    "C-1,Ada Fenwickson,Elm Row",
                    "C-2,Bram Larkmoor,Elm Row",
                    "C-3,Cato Yarrowford,Elm Row"
                )
            )
        );
        var visits = Binders.Draft(
            SheetKind.Visits,
            Binders.Csv(
                "client code,salon,date,start,minutes,service,chair,stylist,state",
                "C-1,Elm Row,2027-02-10,09:30,90,Rebond,Chair 1,Imre Castellan,booked",
                "C-2,Elm Row,2027-02-10,10:30,60,Rebond,Chair 1,,booked",
                "C-3,Elm Row,2027-02-10,10:00,60,Rebond,Chair 2,Imre Castellan,booked",
                "C-2,Elm Row,2027-02-10,11:30,60,Rebond,Chair 1,,booked",
                "C-3,Elm Row,2027-02-10,09:00,60,Rebond,Chair 1,Imre Castellan,cancelled"
            )
        );

        var problems = (await clinic.PreviewAsync(visits)).Problems;

        Assert.Equal(
            [
                "3: Chair 1 is taken twice: the visit of C-2 at 2027-02-10 10:30 (row 3) overlaps that of C-1 at 2027-02-10 09:30 (row 2).",
                "4: Imre Castellan is taken twice: the visit of C-3 at 2027-02-10 10:00 (row 4) overlaps that of C-1 at 2027-02-10 09:30 (row 2).",
            ],
            problems.Select(Binders.Told)
        );
    }

    [Fact]
    public async Task A_second_open_bond_of_a_head_names_the_other_row()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await clinic.BringAsync(Binders.Draft(SheetKind.Clients, Binders.Csv("code,name,home salon", "C-1,Ada Fenwickson,Elm Row")));
        await clinic.BringAsync(
            Binders.Draft(
                SheetKind.Units,
                Binders.Csv("serial,client code,base,state", "U-1,C-1,French lace,bonded", "U-2,C-1,French lace,resting")
            )
        );
        var bonds = Binders.Draft(
            SheetKind.Bonds,
            Binders.Csv("serial,client code,applied on,adhesive", "U-1,C-1,2027-01-05,Adhesive A", "U-2,C-1,2027-01-20,Adhesive A")
        );

        var problem = Assert.Single((await clinic.PreviewAsync(bonds)).Problems);

        Assert.Equal(2, problem.Row);
        Assert.Contains(
            "unit U-1, bonded on 2027-01-05 (row 2), was not taken off before unit U-2 was bonded on 2027-01-20 (row 3)",
            problem.Refused!.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Dates_that_can_be_read_two_ways_are_asked_about_and_those_that_cannot_are_not()
    {
        var open = Binders.Draft(
            SheetKind.Clients,
            Binders.Csv("code,name,home salon,birth date", "C-1,Ada Fenwickson,Elm Row,03/04/1970")
        );
        var settled = Binders.Draft(
            SheetKind.Clients,
            Binders.Csv("code,name,home salon,birth date", "C-1,Ada Fenwickson,Elm Row,23/04/1970")
        );

        Assert.Null(open.Order);
        Assert.NotNull((open with { ChosenDates = DateOrder.MonthDayYear }).Order);
        Assert.Equal(DateOrder.DayMonthYear, settled.Order!.Conventions.DateOrder);
    }
}

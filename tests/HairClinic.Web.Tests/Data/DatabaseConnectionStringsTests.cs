using HairClinic.Web.Data;
using Microsoft.Extensions.Configuration;
using Npgsql;

namespace HairClinic.Web.Tests.Data;

public sealed class DatabaseConnectionStringsTests
{
    private const string Usable = "Host=db;Username=someone;Password=secret;Database=clinic";
    private const string Sized = Usable + ";Maximum Pool Size=20";

    [Fact]
    public void With_nothing_configured_the_program_runs_its_own_server() => Assert.Null(Read());

    [Fact]
    public void An_outside_database_is_named_by_up_to_three_strings()
    {
        Assert.Equal(new(Sized, "Host=m", "Host=k"), Read(("Program", Sized), ("Migrator", "Host=m"), ("Keeper", "Host=k")));
        Assert.Equal(new(Sized, null, null), Read(("Program", Sized), ("Migrator", " ")));
    }

    [Theory]
    [InlineData("", DatabaseConnectionStrings.MostConnections)]
    [InlineData(";Maximum Pool Size=20", 20)]
    [InlineData(";Maximum Pool Size=200", 200)]
    [InlineData(";maxpoolsize=7", 7)]
    public void The_site_takes_no_more_connections_than_a_server_has_room_for_unless_it_is_told_how_many(string told, int size)
    {
        var program = new NpgsqlConnectionStringBuilder(Read(("Program", Usable + told))!.Program);

        Assert.Equal(size, program.MaxPoolSize);
        Assert.Equal(("db", "someone", "secret", "clinic"), (program.Host, program.Username, program.Password, program.Database));
    }

    [Theory]
    [InlineData("Program")]
    [InlineData("Migrator")]
    [InlineData("Keeper")]
    public void A_connection_that_would_carry_one_practice_over_to_the_next_is_refused(string role)
    {
        var refusal = Assert.Throws<InvalidOperationException>(() => Read(("Program", Usable), (role, Usable + ";No Reset On Close=true")));
        Assert.StartsWith($"ConnectionStrings:{role} says 'No Reset On Close=true'", refusal.Message);
    }

    [Fact]
    public void The_others_without_the_program_are_refused() =>
        Assert.Contains(
            "ConnectionStrings:Program is missing",
            Assert.Throws<InvalidOperationException>(() => Read(("Migrator", Usable))).Message
        );

    [Fact]
    public void A_string_that_cannot_be_read_is_refused_without_repeating_the_password()
    {
        var refusal = Assert.Throws<InvalidOperationException>(() => Read(("Program", "Host=db;Passwrod=secret")));
        Assert.DoesNotContain("secret", refusal.ToString());
    }

    private static DatabaseConnectionStrings? Read(params (string Role, string Text)[] strings) =>
        DatabaseConnectionStrings.FromConfiguration(
            new ConfigurationBuilder()
                .AddInMemoryCollection(
                    strings
                        .Select(s => KeyValuePair.Create($"ConnectionStrings:{s.Role}", (string?)s.Text))
                        .Reverse()
                        .DistinctBy(p => p.Key)
                )
                .Build()
        );
}

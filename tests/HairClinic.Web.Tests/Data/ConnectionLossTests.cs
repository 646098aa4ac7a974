using System.Net.Sockets;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace HairClinic.Web.Tests.Data;

/// <summary>One place says what a lost connection is, however EF wraps it. Codes: PostgreSQL documentation, appendix A.</summary>
public sealed class ConnectionLossTests
{
    private static readonly NpgsqlException Broken = new("Exception while reading from stream", new IOException());
    private static readonly NpgsqlException Refused = new("Failed to connect", new SocketException((int)SocketError.ConnectionRefused));

    public static TheoryData<Exception> Lost =>
        [
            Broken,
            Refused,
            new NpgsqlException("The connection pool has been exhausted", new TimeoutException()),
            new InvalidOperationException("An exception has been raised that is likely due to a transient failure.", Refused),
            new DbUpdateException("An error occurred while saving the entity changes.", Broken),
            new RetryLimitExceededException("The maximum number of retries was exceeded.", new DbUpdateException("", Broken)),
            new AggregateException(new FormatException(), Broken),
        ];

    [Theory]
    [MemberData(nameof(Lost))]
    public void A_connection_that_broke_or_was_refused_is_one(Exception fault) => Assert.True(ConnectionLoss.Is(fault));

    [Theory]
    [InlineData("08006", true)]
    [InlineData("08P01", true)]
    [InlineData("57P01", true)]
    [InlineData("57P02", true)]
    [InlineData("57P03", true)]
    [InlineData("53300", true)]
    [InlineData("23505", false)]
    [InlineData("23P01", false)]
    [InlineData("42501", false)]
    [InlineData("40001", false)]
    [InlineData("53100", false)]
    [InlineData("57014", false)]
    public void What_the_server_said_is_one_by_its_code(string state, bool lost)
    {
        var said = new PostgresException("", "FATAL", "FATAL", state);

        Assert.Equal(lost, ConnectionLoss.Is(said));
        Assert.Equal(lost, ConnectionLoss.Is(new DbUpdateException("", said)));
    }

    public static TheoryData<Exception> Others =>
        [
            new InvalidOperationException("Sequence contains no elements"),
            // A file that cannot be written, a mail server that does not answer: not the book.
            new IOException("No space left on device"),
            new SocketException((int)SocketError.ConnectionRefused),
            new TimeoutException(),
            new DbUpdateConcurrencyException(""),
        ];

    [Theory]
    [MemberData(nameof(Others))]
    public void Anything_else_is_none(Exception fault) => Assert.False(ConnectionLoss.Is(fault));
}

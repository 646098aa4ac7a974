using HairClinic.Web.Data.Writes;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace HairClinic.Web.Tests.Data.Writes;

/// <summary>A draft is kept a moment after the last key, goes on being tried while the book is away, and never takes its form along.</summary>
public sealed class DraftTimerTests
{
    private static readonly Exception Away = new InvalidOperationException("likely transient", new NpgsqlException("", new IOException()));

    private readonly List<bool> _notices = [];
    private readonly List<string> _kept = [];
    private string _typed = "";
    private Exception? _fault;

    [Fact]
    public async Task Many_keys_are_one_write_of_what_stands_there_at_last()
    {
        await using var drafts = Timer();
        Type(drafts, "a");
        Type(drafts, "ab");
        Type(drafts, "abc");

        await UntilAsync(() => _kept.Count > 0);

        Assert.Equal(["abc"], _kept);
        Assert.False(drafts.Failed);
    }

    [Fact]
    public async Task While_the_book_is_away_it_says_so_and_keeps_by_itself_what_was_typed_once_it_is_back()
    {
        await using var drafts = Timer();
        _fault = Away;
        Type(drafts, "away");
        await UntilAsync(() => drafts.Failed);

        _fault = null;
        await UntilAsync(() => !drafts.Failed);

        Assert.Equal(["away"], _kept);
        Assert.Equal([true, false], _notices);
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public async Task No_fault_ends_it_and_no_fault_keeps_the_form_from_being_saved(Exception any)
    {
        await using var drafts = Timer();
        _fault = any;
        Type(drafts, "lost");
        await UntilAsync(() => drafts.Failed);
        Type(drafts, "lost again");
        await drafts.CancelPendingAsync();

        _fault = null;
        Type(drafts, "kept");
        await UntilAsync(() => _kept.Count > 0);

        Assert.Equal(["kept"], _kept);
        Assert.False(drafts.Failed);
    }

    public static TheoryData<Exception> Faults => [Away, new DbUpdateException("", Away.InnerException), new TimeoutException()];

    [Fact]
    public async Task What_is_pending_is_kept_when_the_page_goes_away()
    {
        var drafts = Timer();
        Type(drafts, "left");

        await drafts.DisposeAsync();

        Assert.Equal(["left"], _kept);
    }

    private DraftTimer Timer()
    {
        DraftTimer drafts = null!;
        return drafts = new(
            () =>
            {
                if (_fault is not null)
                    return Task.FromException(_fault);
                _kept.Add(_typed);
                return Task.CompletedTask;
            },
            () =>
            {
                _notices.Add(drafts.Failed);
                return Task.CompletedTask;
            }
        );
    }

    private void Type(DraftTimer drafts, string text)
    {
        _typed = text;
        drafts.Touch();
    }

    private static async Task UntilAsync(Func<bool> there)
    {
        for (var tries = 0; !there(); tries++)
        {
            Assert.True(tries < 1000, "It did not come within ten seconds.");
            await Task.Delay(10, TestContext.Current.CancellationToken);
        }
    }
}

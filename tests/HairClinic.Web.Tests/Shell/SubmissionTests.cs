using FluentValidation;
using HairClinic.Domain.Practices;
using HairClinic.Web.Shell;
using Npgsql;

namespace HairClinic.Web.Tests.Shell;

public sealed class SubmissionTests
{
    private readonly Submission<Input> _submission = new(new InlineValidator<Input>());

    [Fact]
    public async Task A_refusal_that_names_a_field_of_the_form_stands_at_that_field()
    {
        var sent = await _submission.SendAsync(
            new Input("x"),
            _ => throw new Refusal("“{0}” cannot be.", "x") { Field = nameof(Input.Phone) }
        );

        Assert.False(sent);
        Assert.Null(_submission.Refused);
        Assert.Equal(nameof(Input.Phone), Assert.Single(_submission.Check!.Errors).PropertyName);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("Elsewhere")]
    public async Task A_refusal_that_names_none_or_one_the_form_lacks_is_told_above_it(string? field)
    {
        await _submission.SendAsync(new Input("x"), _ => throw new Refusal("No.") { Field = field });

        Assert.Equal("No.", _submission.Refused!.Message);
        Assert.True(_submission.Check!.IsValid);
    }

    [Fact]
    public async Task What_stood_at_a_field_is_gone_once_it_is_sent_again()
    {
        await _submission.SendAsync(new Input("x"), _ => throw new Refusal("No.") { Field = nameof(Input.Phone) });

        Assert.True(await _submission.SendAsync(new Input("y"), _ => Task.CompletedTask));

        Assert.True(_submission.Check!.IsValid);
    }

    [Fact]
    public async Task While_the_book_is_away_it_says_so_goes_on_by_itself_and_keeps_its_key()
    {
        var opened = _submission.Key;
        List<Guid> keys = [];
        var sending = _submission.SendAsync(new Input("x"), key => Once(keys, key, away: 1));

        await UntilAsync(() => _submission.Refused is not null);
        Assert.False(_submission.Saving);
        Assert.Equal("Not saved yet: the book cannot be reached. It is tried again by itself.", _submission.Refused!.Message);

        Assert.True(await sending);
        Assert.Equal([opened, opened], keys);
        Assert.NotEqual(opened, _submission.Key);
        Assert.Null(_submission.Refused);
    }

    [Fact]
    public async Task The_next_tap_sends_it_at_once_and_the_effect_is_one()
    {
        List<Guid> keys = [];
        var input = new Input("x");
        var since = System.Diagnostics.Stopwatch.StartNew();
        var first = _submission.SendAsync(input, key => Once(keys, key, away: 1));
        await UntilAsync(() => _submission.Refused is not null);

        var second = await _submission.SendAsync(input, key => Once(keys, key, away: 1));

        Assert.True(await first);
        Assert.False(second);
        Assert.True(since.Elapsed < TimeSpan.FromSeconds(2), "It waited.");
        Assert.Equal(2, keys.Count);
        Assert.Single(keys.Distinct());
    }

    [Fact]
    public async Task A_tap_that_means_something_else_takes_the_place_of_what_waited()
    {
        List<string> saved = [];
        var first = _submission.SendAsync(new Input("Rang"), _ => throw Away);
        await UntilAsync(() => _submission.Refused is not null);

        Assert.True(
            await _submission.SendAsync(
                new Input("Messaged"),
                _ =>
                {
                    saved.Add("Messaged");
                    return Task.CompletedTask;
                }
            )
        );

        Assert.False(await first);
        Assert.Equal(["Messaged"], saved);
    }

    [Fact]
    public async Task What_is_typed_on_meanwhile_is_not_sent_half_typed()
    {
        List<Guid> keys = [];
        var input = new Changing { Phone = "1" };
        var changing = new Submission<Changing>(new InlineValidator<Changing>());
        var sending = changing.SendAsync(input, key => Once(keys, key, away: 1));
        await UntilAsync(() => changing.Refused is not null);
        input.Phone = "12";

        Assert.False(await sending);

        Assert.Single(keys);
        Assert.Equal(
            "Not saved yet: the book cannot be reached. What you typed is still here; tap once more to save it.",
            changing.Refused!.Message
        );
        Assert.Equal(keys[0], changing.Key);
    }

    [Fact]
    public async Task A_key_of_before_the_page_was_loaded_again_is_taken_up()
    {
        var before = Guid.CreateVersion7();
        List<Guid> keys = [];

        _submission.AdoptKey(before);
        await _submission.SendAsync(new Input("x"), key => Once(keys, key, away: 0));

        Assert.Equal([before], keys);
    }

    private static readonly Exception Away = new InvalidOperationException("likely transient", new NpgsqlException("", new IOException()));

    private static Task Once(List<Guid> keys, Guid key, int away)
    {
        keys.Add(key);
        return keys.Count <= away ? Task.FromException(Away) : Task.CompletedTask;
    }

    private static async Task UntilAsync(Func<bool> there)
    {
        for (var tries = 0; !there(); tries++)
        {
            Assert.True(tries < 1000, "It did not come within ten seconds.");
            await Task.Delay(10, TestContext.Current.CancellationToken);
        }
    }

    private sealed class Changing
    {
        public string Phone { get; set; } = "";
    }

    private sealed record Input(string Phone);
}

using FluentValidation;
using HairClinic.Domain.Practices;
using HairClinic.Web.Shell;

namespace HairClinic.Web.Tests.Shell;

public sealed class SubmissionTests
{
    private readonly Submission<Input> submission = new(new InlineValidator<Input>());

    [Fact]
    public async Task A_refusal_that_names_a_field_of_the_form_stands_at_that_field()
    {
        var sent = await submission.SendAsync(
            new Input("x"),
            _ => throw new Refusal("“{0}” cannot be.", "x") { Field = nameof(Input.Phone) }
        );

        Assert.False(sent);
        Assert.Null(submission.Refused);
        Assert.Equal(nameof(Input.Phone), Assert.Single(submission.Check!.Errors).PropertyName);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("Elsewhere")]
    public async Task A_refusal_that_names_none_or_one_the_form_lacks_is_told_above_it(string? field)
    {
        await submission.SendAsync(new Input("x"), _ => throw new Refusal("No.") { Field = field });

        Assert.Equal("No.", submission.Refused!.Message);
        Assert.True(submission.Check!.IsValid);
    }

    [Fact]
    public async Task What_stood_at_a_field_is_gone_once_it_is_sent_again()
    {
        await submission.SendAsync(new Input("x"), _ => throw new Refusal("No.") { Field = nameof(Input.Phone) });

        Assert.True(await submission.SendAsync(new Input("y"), _ => Task.CompletedTask));

        Assert.True(submission.Check!.IsValid);
    }

    private sealed record Input(string Phone);
}

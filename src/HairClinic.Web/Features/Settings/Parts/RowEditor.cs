using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>What the slices that edit one row of the practice's settings share: a new one, a change, or that it is used no more.</summary>
public abstract class RowEditor<TRow, TInput>(ClinicDbFactory databases, WriteOnce writes)
    where TRow : PracticeOwned
    where TInput : RowInput
{
    protected ClinicDbFactory Databases => databases;

    /// <exception cref="Refusal">The row cannot be so, or would stand there twice.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, TInput input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, GetType().Name, input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (TwiceBy(e, input) is { } refusal)
        {
            throw refusal;
        }
    }

    /// <summary>Its rows with the parts that the form shows.</summary>
    protected abstract IQueryable<TRow> Rows(ClinicDb db);

    protected abstract TInput Read(TRow row);

    protected abstract TRow Make(TInput input);

    /// <param name="isNew">It was made a moment ago.</param>
    protected abstract void Write(ClinicDb db, TRow row, TInput input, bool isNew);

    /// <summary>What to say when the database refuses to have the same thing twice; null where it refuses something else.</summary>
    protected abstract Refusal? TwiceBy(DbUpdateException e, TInput input);

    /// <returns>Null where there is no such row for this person.</returns>
    protected async Task<TInput?> ReadAsync(ClinicDb db, Guid id, CancellationToken cancellation)
    {
        if (await Rows(db).AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancellation) is not { } row)
            return null;
        var input = Read(row);
        (input.Id, input.Version) = (row.Id, row.Version);
        return input;
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, TInput input, CancellationToken cancellation)
    {
        if (input.Id is not { } id)
        {
            var made = Make(input);
            db.Add(made);
            Write(db, made, input, isNew: true);
            return new Outcome(made.Id);
        }
        var row =
            await Rows(db).SingleOrDefaultAsync(r => r.Id == id, cancellation)
            ?? throw new Refusal("Someone else took this out meanwhile, so it cannot be changed any more.");
        ConcurrentEdits.ExpectVersion(db, row, input.Version);
        Write(db, row, input, isNew: false);
        return new Outcome(id);
    }

    public sealed record Outcome(Guid Id);
}

/// <summary>What each of their forms sends besides its own fields.</summary>
public abstract record RowInput : IEditInput
{
    /// <summary>Null for a new one.</summary>
    [FromDatabase]
    public Guid? Id { get; set; }

    [FromDatabase]
    public uint Version { get; set; }

    [FormOnly]
    public bool Retire { get; set; }
}

/// <summary>One of those that a form offers.</summary>
public sealed record RowOption(Guid Id, string Name);

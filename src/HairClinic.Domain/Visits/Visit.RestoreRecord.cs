namespace HairClinic.Domain.Visits;

public sealed partial class Visit
{
    /// <summary>
    /// Takes over what an old book says was seen when a bond came off at this visit. Bond and unit stand as their own
    /// rows of that book say; the book is the witness.
    /// </summary>
    /// <param name="waitsKept">Of the bond that was made at this visit.</param>
    /// <exception cref="Refusal">The visit has a record already, or was called off.</exception>
    public void RestoreRecord(Guid recordId, Guid removedUnitId, TakeDown found, bool? waitsKept, Instant at, Guid? by)
    {
        RequireNotLogged();
        Record = new VisitRecord(recordId, Id, removedUnitId, found, at, by, note: null);
        Record.NoteWaits(waitsKept);
    }
}

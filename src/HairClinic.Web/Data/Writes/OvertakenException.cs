namespace HairClinic.Web.Data.Writes;

/// <summary>Someone else saved the same thing since the form opened. Nothing of this submission was saved.</summary>
public sealed class OvertakenException(Exception inner) : Exception("Someone else saved this since you opened it.", inner);

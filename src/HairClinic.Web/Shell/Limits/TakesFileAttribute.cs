namespace HairClinic.Web.Shell.Limits;

/// <summary>A page whose form brings one file. <see cref="FileFormReader"/> reads it; everywhere else a request has the size of a form.</summary>
/// <param name="mostBytes">The largest file that is kept, in bytes.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class TakesFileAttribute(int mostBytes) : Attribute
{
    public int MostBytes => mostBytes;
}

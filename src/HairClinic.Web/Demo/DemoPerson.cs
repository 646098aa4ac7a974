using HairClinic.Domain.Practices;

namespace HairClinic.Web.Demo;

/// <param name="SignIn">What stands before the @ of their demo sign-in.</param>
public sealed record DemoPerson(string Name, StaffRole Role, string SignIn, IReadOnlyList<DemoSalon> Salons);

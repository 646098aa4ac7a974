using HairClinic.Web;
using HairClinic.Web.Shell.Verbs;

return await CommandLine.RunAsync(args, Clinic.Build);

public partial class Program;

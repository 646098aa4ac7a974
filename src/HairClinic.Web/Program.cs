using HairClinic.Web;
using HairClinic.Web.CommandLine;

return await Commands.RunAsync(args, Clinic.Build);

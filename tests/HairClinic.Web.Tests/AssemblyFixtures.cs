using HairClinic.Web.Tests;

[assembly: AssemblyFixture(typeof(PgServer))]

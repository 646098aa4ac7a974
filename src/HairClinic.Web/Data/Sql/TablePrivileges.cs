namespace HairClinic.Web.Data.Sql;

/// <summary>What the program's and the keeper's roles may do at all; with which rows, the policies say.</summary>
public static class TablePrivileges
{
    public const string Sql = """
        grant usage on schema public to hairclinic_program, hairclinic_keeper;
        grant select, insert, update, delete on all tables in schema public to hairclinic_program;
        grant usage, select on all sequences in schema public to hairclinic_program;
        grant select on all tables in schema public to hairclinic_keeper;
        alter default privileges revoke execute on functions from public;
        revoke insert, update, delete on "__EFMigrationsHistory" from hairclinic_program;
        """;
}

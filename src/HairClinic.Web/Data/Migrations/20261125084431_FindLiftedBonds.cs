using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class FindLiftedBonds : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(
                name: "ix_bonds_open_lifted",
                table: "bonds",
                columns: new[] { "practice_id", "closes_on", "id" },
                filter: "removed_on is null and lift_reported_on is not null");
        }
    }
}

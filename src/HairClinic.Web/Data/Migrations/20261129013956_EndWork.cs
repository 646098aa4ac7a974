using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class EndWork : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "fate",
                table: "work_items",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<Instant>(
                name: "handed_at",
                table: "work_items",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Instant>(
                name: "held_until",
                table: "work_items",
                type: "timestamp with time zone",
                nullable: true);
        }
    }
}

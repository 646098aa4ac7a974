using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class KnowInvitations : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "invitation",
                table: "sign_in_links",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<bool>(
                name: "invitation",
                table: "client_sign_ins",
                type: "boolean",
                nullable: false,
                defaultValue: false);
        }
    }
}

using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class LearnDudDropAndEffectSpread : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<double>(
                name: "dud_drop_spread",
                table: "stored_fits",
                type: "double precision",
                nullable: false,
                defaultValue: 0.3);

            migrationBuilder.AddColumn<double>(
                name: "dud_usual_drop",
                table: "stored_fits",
                type: "double precision",
                nullable: false,
                defaultValue: 0.5);

            migrationBuilder.AddColumn<double>(
                name: "effect_spread",
                table: "stored_fits",
                type: "double precision",
                nullable: false,
                defaultValue: 0.35);
        }
    }
}

using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class LearnDudsRepairsAndSpares : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "spares",
                table: "unit_kinds",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<Guid[]>(
                name: "dud_kinds",
                table: "stored_fits",
                type: "uuid[]",
                nullable: false,
                defaultValue: new Guid[0]);

            migrationBuilder.AddColumn<double[]>(
                name: "dud_shares",
                table: "stored_fits",
                type: "double precision[]",
                nullable: false,
                defaultValue: new double[0]);

            migrationBuilder.AddColumn<double>(
                name: "other_dud_share",
                table: "stored_fits",
                type: "double precision",
                nullable: false,
                defaultValue: 0.0);

            migrationBuilder.AddColumn<double>(
                name: "repair_chance",
                table: "stored_fits",
                type: "double precision",
                nullable: false,
                defaultValue: 0.0);

            migrationBuilder.AddColumn<double>(
                name: "repair_rate",
                table: "stored_fits",
                type: "double precision",
                nullable: false,
                defaultValue: 0.0);

            migrationBuilder.AddColumn<int>(
                name: "spares_missing",
                table: "reorder_plans",
                type: "integer",
                nullable: false,
                defaultValue: 0);
        }
    }
}

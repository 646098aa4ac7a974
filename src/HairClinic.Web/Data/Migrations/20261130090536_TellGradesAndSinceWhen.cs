using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class TellGradesAndSinceWhen : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "grades_copied",
                table: "visit_records",
                type: "boolean",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "lifted_since",
                table: "visit_records",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "worn_out_on",
                table: "visit_records",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "worn_out_since",
                table: "visit_records",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "end_condition",
                table: "hair_systems",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "end_grade_base",
                table: "hair_systems",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "end_grade_colour",
                table: "hair_systems",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "end_grade_fit",
                table: "hair_systems",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "end_grade_hair",
                table: "hair_systems",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "end_grade_knots",
                table: "hair_systems",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "end_grade_shedding",
                table: "hair_systems",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "end_grades_copied",
                table: "hair_systems",
                type: "boolean",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "end_look_by",
                table: "hair_systems",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "end_worn_out_on",
                table: "hair_systems",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "end_worn_out_since",
                table: "hair_systems",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "lift_earliest_on",
                table: "bonds",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "lift_latest_on",
                table: "bonds",
                type: "date",
                nullable: true);
        }
    }
}

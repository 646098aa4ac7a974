using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class CorrectDaysAndNamePhotos : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "corrects_id",
                table: "unit_steps",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "hair_system_id",
                table: "photos",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "visit_id",
                table: "photos",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_unit_steps_practice_id_corrects_id",
                table: "unit_steps",
                columns: new[] { "practice_id", "corrects_id" });

            migrationBuilder.CreateIndex(
                name: "ix_photos_practice_id_hair_system_id",
                table: "photos",
                columns: new[] { "practice_id", "hair_system_id" });

            migrationBuilder.CreateIndex(
                name: "ix_photos_practice_id_visit_id",
                table: "photos",
                columns: new[] { "practice_id", "visit_id" });

            migrationBuilder.AddForeignKey(
                name: "fk_photos_hair_systems_practice_id_hair_system_id",
                table: "photos",
                columns: new[] { "practice_id", "hair_system_id" },
                principalTable: "hair_systems",
                principalColumns: new[] { "practice_id", "id" });

            migrationBuilder.AddForeignKey(
                name: "fk_photos_visits_practice_id_visit_id",
                table: "photos",
                columns: new[] { "practice_id", "visit_id" },
                principalTable: "visits",
                principalColumns: new[] { "practice_id", "id" });

            migrationBuilder.AddForeignKey(
                name: "fk_unit_steps_unit_steps_practice_id_corrects_id",
                table: "unit_steps",
                columns: new[] { "practice_id", "corrects_id" },
                principalTable: "unit_steps",
                principalColumns: new[] { "practice_id", "id" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_photos_hair_systems_practice_id_hair_system_id",
                table: "photos");

            migrationBuilder.DropForeignKey(
                name: "fk_photos_visits_practice_id_visit_id",
                table: "photos");

            migrationBuilder.DropForeignKey(
                name: "fk_unit_steps_unit_steps_practice_id_corrects_id",
                table: "unit_steps");

            migrationBuilder.DropIndex(
                name: "ix_unit_steps_practice_id_corrects_id",
                table: "unit_steps");

            migrationBuilder.DropIndex(
                name: "ix_photos_practice_id_hair_system_id",
                table: "photos");

            migrationBuilder.DropIndex(
                name: "ix_photos_practice_id_visit_id",
                table: "photos");

            migrationBuilder.DropColumn(
                name: "corrects_id",
                table: "unit_steps");

            migrationBuilder.DropColumn(
                name: "hair_system_id",
                table: "photos");

            migrationBuilder.DropColumn(
                name: "visit_id",
                table: "photos");
        }
    }
}

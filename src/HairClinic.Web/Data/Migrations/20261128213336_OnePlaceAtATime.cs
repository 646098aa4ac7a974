using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class OnePlaceAtATime : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "holds_client",
                table: "visits",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<Guid>(
                name: "chair_id",
                table: "visit_segments",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "holds_chair",
                table: "visit_segments",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateIndex(
                name: "ix_visit_segments_practice_id_chair_id_starts_at",
                table: "visit_segments",
                columns: new[] { "practice_id", "chair_id", "starts_at" });

            migrationBuilder.AddForeignKey(
                name: "fk_visit_segments_chairs_practice_id_chair_id",
                table: "visit_segments",
                columns: new[] { "practice_id", "chair_id" },
                principalTable: "chairs",
                principalColumns: new[] { "practice_id", "id" });

            Fence.HoldOnePlaceAtATime(migrationBuilder);
        }
    }
}

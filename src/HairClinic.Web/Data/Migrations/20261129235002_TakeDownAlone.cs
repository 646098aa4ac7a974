using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    public partial class TakeDownAlone : Migration
    {
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<LocalDate>(
                name: "no_bond_until",
                table: "bonds",
                type: "date",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "take_down_products",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    visit_record_id = table.Column<Guid>(type: "uuid", nullable: false),
                    product_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_take_down_products", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_take_down_products_product_lots_practice_id_lot_id",
                        columns: x => new { x.practice_id, x.lot_id },
                        principalTable: "product_lots",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_take_down_products_products_practice_id_product_id",
                        columns: x => new { x.practice_id, x.product_id },
                        principalTable: "products",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_take_down_products_visit_records_practice_id_visit_record_id",
                        columns: x => new { x.practice_id, x.visit_record_id },
                        principalTable: "visit_records",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_take_down_products_practice_id_lot_id",
                table: "take_down_products",
                columns: new[] { "practice_id", "lot_id" });

            migrationBuilder.CreateIndex(
                name: "ix_take_down_products_practice_id_product_id",
                table: "take_down_products",
                columns: new[] { "practice_id", "product_id" });

            migrationBuilder.CreateIndex(
                name: "ix_take_down_products_practice_id_visit_record_id",
                table: "take_down_products",
                columns: new[] { "practice_id", "visit_record_id" });
        }
    }
}

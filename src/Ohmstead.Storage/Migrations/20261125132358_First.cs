using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Ohmstead.Workshop.Job;

#nullable disable

namespace Ohmstead.Storage.Migrations
{
    /// <inheritdoc />
    public partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Documents",
                columns: table => new
                {
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "PK_Documents",
                        x => new
                        {
                            x.Kind,
                            x.Id,
                            x.Version,
                        }
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "Photos",
                columns: table => new
                {
                    Hash = table.Column<string>(type: "TEXT", nullable: false),
                    Bytes = table.Column<long>(type: "INTEGER", nullable: false),
                    WidthPixels = table.Column<int>(type: "INTEGER", nullable: false),
                    HeightPixels = table.Column<int>(type: "INTEGER", nullable: false),
                    MediaType = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Photos", x => x.Hash);
                }
            );

            migrationBuilder.CreateTable(
                name: "Units",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LastNumber = table.Column<int>(type: "INTEGER", nullable: false),
                    Tag = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    SheetId = table.Column<string>(type: "TEXT", nullable: false),
                    Owner = table.Column<string>(type: "TEXT", nullable: false),
                    Photo = table.Column<string>(type: "TEXT", nullable: false),
                    LastDone = table.Column<string>(type: "TEXT", nullable: false),
                    LastAt = table.Column<long>(type: "INTEGER", nullable: false),
                    NextAction = table.Column<string>(type: "TEXT", nullable: false),
                    NextWords = table.Column<string>(type: "TEXT", nullable: false),
                    NextMinutes = table.Column<double>(type: "REAL", nullable: false),
                    NextAbout = table.Column<string>(type: "TEXT", nullable: false),
                    IsHandedBack = table.Column<bool>(type: "INTEGER", nullable: false),
                    Search = table.Column<string>(type: "TEXT", nullable: false),
                    KindSearch = table.Column<string>(type: "TEXT", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Units", x => x.Id);
                }
            );

            migrationBuilder.CreateTable(
                name: "Entries",
                columns: table => new
                {
                    UnitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false),
                    Search = table.Column<string>(type: "TEXT", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Entries", x => new { x.UnitId, x.Number });
                    table.ForeignKey(
                        name: "FK_Entries_Units_UnitId",
                        column: x => x.UnitId,
                        principalTable: "Units",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateIndex(name: "IX_Entries_Id", table: "Entries", column: "Id", unique: true);

            migrationBuilder.CreateIndex(name: "IX_Units_LastAt", table: "Units", column: "LastAt");

            migrationBuilder.CreateIndex(name: "IX_Units_SheetId", table: "Units", column: "SheetId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "Documents");

            migrationBuilder.DropTable(name: "Entries");

            migrationBuilder.DropTable(name: "Photos");

            migrationBuilder.DropTable(name: "Units");
        }
    }
}

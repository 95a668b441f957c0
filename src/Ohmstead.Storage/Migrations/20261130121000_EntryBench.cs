using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Ohmstead.Storage.Migrations
{
    /// <inheritdoc />
    public partial class EntryBench : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(name: "Bench", table: "Entries", type: "TEXT", nullable: false, defaultValue: "");
            migrationBuilder.AddColumn<string>(name: "After", table: "Entries", type: "TEXT", nullable: true);
            migrationBuilder.AddColumn<int>(name: "Contradictions", table: "Units", type: "INTEGER", nullable: false, defaultValue: 0);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(name: "Bench", table: "Entries");
            migrationBuilder.DropColumn(name: "After", table: "Entries");
            migrationBuilder.DropColumn(name: "Contradictions", table: "Units");
        }
    }
}

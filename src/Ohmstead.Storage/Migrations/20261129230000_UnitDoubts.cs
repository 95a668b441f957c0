using Microsoft.EntityFrameworkCore.Migrations;
using Ohmstead.Workshop.Units;

#nullable disable

namespace Ohmstead.Storage.Migrations
{
    /// <inheritdoc />
    public partial class UnitDoubts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(name: "Doubts", table: "Units", type: "TEXT", nullable: false, defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(name: "Doubts", table: "Units");
        }
    }
}

using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Ohmstead.Storage.Migrations
{
    /// <inheritdoc />
    public partial class UnitFitted : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(name: "Fitted", table: "Units", type: "TEXT", nullable: false, defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(name: "Fitted", table: "Units");
        }
    }
}

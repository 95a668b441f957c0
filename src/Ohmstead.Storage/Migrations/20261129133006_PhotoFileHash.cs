using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Ohmstead.Storage.Migrations
{
    /// <inheritdoc />
    public partial class PhotoFileHash : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(name: "FileHash", table: "Photos", type: "TEXT", nullable: false, defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(name: "FileHash", table: "Photos");
        }
    }
}

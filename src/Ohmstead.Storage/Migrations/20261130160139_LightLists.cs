using Microsoft.EntityFrameworkCore.Migrations;
using Ohmstead.Storage.Databases;

#nullable disable

namespace Ohmstead.Storage.Migrations
{
    /// <inheritdoc />
    public partial class LightLists : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(name: "Place", table: "Units", type: "INTEGER", nullable: false, defaultValue: 0);

            // As HalfHour.PlaceOf has it.
            migrationBuilder.Sql(
                """
                UPDATE "Units" SET "Place" = CASE
                    WHEN "NextMinutes" > 30 THEN 9
                    WHEN "NextAction" IN ('Repair', 'CheckWiring', 'TakeApart', 'PutBack') THEN 0
                    WHEN "NextAction" = 'TakeReading' THEN 1
                    WHEN "NextAction" = 'JudgeFindings' THEN 2
                    WHEN "NextAction" IN ('MakePaper', 'Return') THEN 3
                    WHEN "NextAction" = 'LookOver' THEN 4
                    ELSE 5 END
                """
            );

            migrationBuilder.CreateIndex(
                name: "IX_Units_Contradictions",
                table: "Units",
                column: "Contradictions",
                filter: "\"Contradictions\" > 0"
            );

            migrationBuilder.CreateIndex(
                name: "IX_Units_IsHandedBack_LastAt_Id",
                table: "Units",
                columns: new[] { "IsHandedBack", "LastAt", "Id" },
                descending: new[] { false, true, false }
            );

            migrationBuilder.CreateIndex(
                name: "IX_Units_IsHandedBack_Place_LastAt_Id",
                table: "Units",
                columns: new[] { "IsHandedBack", "Place", "LastAt", "Id" },
                descending: new[] { false, false, true, false }
            );

            migrationBuilder.CreateIndex(name: "IX_Units_IsHandedBack_Tag", table: "Units", columns: new[] { "IsHandedBack", "Tag" });

            migrationBuilder.CreateIndex(name: "IX_Units_WithFitted", table: "Units", column: "Id", filter: "\"Fitted\" <> ''");

            // A migration that makes the table anew must make its triggers again.
            migrationBuilder.Sql(LetterIndex.Make);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(LetterIndex.Drop);

            migrationBuilder.DropIndex(name: "IX_Units_Contradictions", table: "Units");

            migrationBuilder.DropIndex(name: "IX_Units_IsHandedBack_LastAt_Id", table: "Units");

            migrationBuilder.DropIndex(name: "IX_Units_IsHandedBack_Place_LastAt_Id", table: "Units");

            migrationBuilder.DropIndex(name: "IX_Units_IsHandedBack_Tag", table: "Units");

            migrationBuilder.DropIndex(name: "IX_Units_WithFitted", table: "Units");

            migrationBuilder.DropColumn(name: "Place", table: "Units");
        }
    }
}

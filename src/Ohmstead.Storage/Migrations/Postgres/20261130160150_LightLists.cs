using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Ohmstead.Storage.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class LightLists : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(name: "Place", table: "Units", type: "integer", nullable: false, defaultValue: 0);

            // As HalfHour.PlaceOf has it. The other programs need not be told of every unit.
            migrationBuilder.Sql(
                """
                ALTER TABLE "Units" DISABLE TRIGGER ohmstead_tell;
                UPDATE "Units" SET "Place" = CASE
                    WHEN "NextMinutes" > 30 THEN 9
                    WHEN "NextAction" IN ('Repair', 'CheckWiring', 'TakeApart', 'PutBack') THEN 0
                    WHEN "NextAction" = 'TakeReading' THEN 1
                    WHEN "NextAction" = 'JudgeFindings' THEN 2
                    WHEN "NextAction" IN ('MakePaper', 'Return') THEN 3
                    WHEN "NextAction" = 'LookOver' THEN 4
                    ELSE 5 END;
                ALTER TABLE "Units" ENABLE TRIGGER ohmstead_tell;
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

            // Letters by threes. An extension of PostgreSQL's own package; a server without it, or an account that may not, searches without.
            migrationBuilder.Sql(
                """
                DO $$ BEGIN
                    CREATE EXTENSION IF NOT EXISTS pg_trgm;
                    CREATE INDEX "IX_Units_Letters" ON "Units" USING gin ("Search" gin_trgm_ops, "KindSearch" gin_trgm_ops);
                EXCEPTION WHEN OTHERS THEN
                    RAISE NOTICE 'no index of letters: %', SQLERRM;
                END $$;
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP INDEX IF EXISTS \"IX_Units_Letters\"");

            migrationBuilder.DropIndex(name: "IX_Units_Contradictions", table: "Units");

            migrationBuilder.DropIndex(name: "IX_Units_IsHandedBack_LastAt_Id", table: "Units");

            migrationBuilder.DropIndex(name: "IX_Units_IsHandedBack_Place_LastAt_Id", table: "Units");

            migrationBuilder.DropIndex(name: "IX_Units_IsHandedBack_Tag", table: "Units");

            migrationBuilder.DropIndex(name: "IX_Units_WithFitted", table: "Units");

            migrationBuilder.DropColumn(name: "Place", table: "Units");
        }
    }
}

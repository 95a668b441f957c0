using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Ohmstead.Storage.Migrations.Postgres
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
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    At = table.Column<long>(type: "bigint", nullable: false),
                    Text = table.Column<string>(type: "text", nullable: false, collation: "C"),
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
                name: "PhotoContents",
                columns: table => new
                {
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Content = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PhotoContents", x => x.Hash);
                }
            );

            migrationBuilder.CreateTable(
                name: "Photos",
                columns: table => new
                {
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    FileHash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Bytes = table.Column<long>(type: "bigint", nullable: false),
                    WidthPixels = table.Column<int>(type: "integer", nullable: false),
                    HeightPixels = table.Column<int>(type: "integer", nullable: false),
                    MediaType = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    At = table.Column<long>(type: "bigint", nullable: false),
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
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    LastNumber = table.Column<int>(type: "integer", nullable: false),
                    Tag = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    SheetId = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Owner = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Photo = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    LastDone = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    LastAt = table.Column<long>(type: "bigint", nullable: false),
                    NextAction = table.Column<string>(type: "text", nullable: false),
                    NextWords = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    NextMinutes = table.Column<double>(type: "double precision", nullable: false),
                    NextAbout = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    IsHandedBack = table.Column<bool>(type: "boolean", nullable: false),
                    Doubts = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Fitted = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Search = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    KindSearch = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Contradictions = table.Column<int>(type: "integer", nullable: false),
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
                    UnitId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<long>(type: "bigint", nullable: false),
                    By = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Bench = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    After = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Search = table.Column<string>(type: "text", nullable: false, collation: "C"),
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

            // Images are compressed already.
            migrationBuilder.Sql("""ALTER TABLE "PhotoContents" ALTER COLUMN "Content" SET STORAGE EXTERNAL""");

            // What changed is told to every program by the database itself, at the end of each transaction: the writer's name first.
            migrationBuilder.Sql(
                """
                CREATE FUNCTION ohmstead_tell_unit() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    PERFORM pg_notify('ohmstead', current_setting('application_name') || ' ' ||
                        CASE WHEN TG_OP = 'INSERT' THEN 'entries'
                             WHEN NEW."LastNumber" <> OLD."LastNumber" THEN 'entries'
                             ELSE 'found' END || ' ' || NEW."Id");
                    RETURN NULL;
                END $$;
                CREATE TRIGGER ohmstead_tell AFTER INSERT OR UPDATE ON "Units" FOR EACH ROW EXECUTE FUNCTION ohmstead_tell_unit();
                CREATE FUNCTION ohmstead_tell_document() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    PERFORM pg_notify('ohmstead', current_setting('application_name') || ' document ' || NEW."Kind");
                    RETURN NULL;
                END $$;
                CREATE TRIGGER ohmstead_tell AFTER INSERT ON "Documents" FOR EACH ROW EXECUTE FUNCTION ohmstead_tell_document();
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "Documents");

            migrationBuilder.DropTable(name: "Entries");

            migrationBuilder.DropTable(name: "PhotoContents");

            migrationBuilder.DropTable(name: "Photos");

            migrationBuilder.DropTable(name: "Units");

            migrationBuilder.Sql("DROP FUNCTION ohmstead_tell_unit(); DROP FUNCTION ohmstead_tell_document()");
        }
    }
}

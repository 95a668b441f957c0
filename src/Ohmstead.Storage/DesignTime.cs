using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Ohmstead.Storage.Databases;

namespace Ohmstead.Storage;

/// <summary>For <c>dotnet ef migrations add NAME -c WorkshopContext -p src/Ohmstead.Storage -s src/Ohmstead.Storage</c>; no database is needed.</summary>
internal sealed class DesignTime : IDesignTimeDbContextFactory<WorkshopContext>, IDesignTimeDbContextFactory<PostgresContext>
{
    public WorkshopContext CreateDbContext(string[] args) => new(SqliteFile.Options("design.db"));

    /// <summary>The same with <c>-c PostgresContext -o Migrations/Postgres</c>.</summary>
    PostgresContext IDesignTimeDbContextFactory<PostgresContext>.CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresContext>().UseNpgsql("Host=design").Options);
}

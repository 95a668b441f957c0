using Microsoft.EntityFrameworkCore.Design;

namespace Ohmstead.Storage;

/// <summary>For <c>dotnet ef migrations add NAME -p src/Ohmstead.Storage -s src/Ohmstead.Storage</c>; no database is needed.</summary>
internal sealed class DesignTime : IDesignTimeDbContextFactory<WorkshopContext>
{
    public WorkshopContext CreateDbContext(string[] args) => new(SqliteFile.Options("design.db"));
}

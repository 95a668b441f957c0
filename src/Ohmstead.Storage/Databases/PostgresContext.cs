using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage.Databases;

/// <summary>The same tables in PostgreSQL, and the photos, which all programs on the database must see.</summary>
internal sealed class PostgresContext(DbContextOptions<PostgresContext> options) : WorkshopContext(options)
{
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        base.OnModelCreating(modelBuilder);
        modelBuilder.Entity<PhotoContentRow>().ToTable("PhotoContents").HasKey(p => p.Hash);
    }

    // By code points, as everywhere: what the server's language thinks of an order is not asked.
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        configurationBuilder.Properties<string>().UseCollation("C");
    }

    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        foreach (var row in ChangeTracker.Entries().Where(e => e.State is EntityState.Added or EntityState.Modified))
        foreach (var field in row.Properties)
            if (field.CurrentValue is string text && PostgresText.Storable(text) is var storable && !ReferenceEquals(storable, text))
                field.CurrentValue = storable;
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }
}

using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage;

/// <summary>The tables. Nothing here is of one database only.</summary>
internal class WorkshopContext : DbContext
{
    public WorkshopContext(DbContextOptions<WorkshopContext> options)
        : base(options) { }

    /// <summary>For a database that needs tables of its own beside these.</summary>
    protected WorkshopContext(DbContextOptions options)
        : base(options) { }

    public DbSet<UnitRow> Units => Set<UnitRow>();
    public DbSet<EntryRow> Entries => Set<EntryRow>();
    public DbSet<DocumentRow> Documents => Set<DocumentRow>();
    public DbSet<PhotoRow> Photos => Set<PhotoRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<UnitRow>(unit =>
        {
            unit.ToTable("Units").HasKey(u => u.Id);
            unit.Property(u => u.NextAction).HasConversion<string>();
            unit.HasIndex(u => u.LastAt);
            unit.HasIndex(u => u.SheetId);
            Lists(unit);
            unit.Ignore(u => u.Card);
        });
        modelBuilder.Entity<EntryRow>(entry =>
        {
            entry.ToTable("Entries").HasKey(e => new { e.UnitId, e.Number });
            entry.HasIndex(e => e.Id).IsUnique();
            entry.HasOne<UnitRow>().WithMany().HasForeignKey(e => e.UnitId).OnDelete(DeleteBehavior.Restrict);
            entry.Ignore(e => e.Entry);
        });
        modelBuilder.Entity<DocumentRow>(document =>
        {
            document
                .ToTable("Documents")
                .HasKey(d => new
                {
                    d.Kind,
                    d.Id,
                    d.Version,
                });
            document.Ignore(d => d.Document);
        });
        modelBuilder.Entity<PhotoRow>().ToTable("Photos").HasKey(p => p.Hash);
    }

    /// <summary>What the lists show first, without reading the others. Few units have a question open, or a part of the drawer in them.</summary>
    private static void Lists(EntityTypeBuilder<UnitRow> unit)
    {
        unit.HasIndex(u => new
            {
                u.IsHandedBack,
                u.Place,
                u.LastAt,
                u.Id,
            })
            .IsDescending(false, false, true, false);
        unit.HasIndex(u => new
            {
                u.IsHandedBack,
                u.LastAt,
                u.Id,
            })
            .IsDescending(false, true, false);
        unit.HasIndex(u => new { u.IsHandedBack, u.Tag });
        unit.HasIndex(u => u.Contradictions).HasFilter("\"Contradictions\" > 0");
        unit.HasIndex(u => u.Id, "IX_Units_WithFitted").HasFilter("\"Fitted\" <> ''");
    }

    // Ticks sort and compare in every database; a column of times with offsets does not.
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTicks>();

    private sealed class UtcTicks()
        : ValueConverter<DateTimeOffset, long>(at => at.UtcTicks, ticks => new DateTimeOffset(ticks, TimeSpan.Zero));
}

package store

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"
	"net/url"
	"path/filepath"
	"strings"

	"github.com/pressly/goose/v3"
	_ "modernc.org/sqlite" // the driver
)

//go:embed migrations/*.sql
var migrations embed.FS

// What each connection is told, before anything else. Pragmas stand in the
// address so that every connection of a pool obeys them.
var (
	writer = url.Values{
		"_txlock": {"immediate"},
		"_pragma": {"busy_timeout(5000)", "journal_mode(WAL)", "synchronous(FULL)", "foreign_keys(1)", "secure_delete(1)"},
	}
	reader = url.Values{
		"_pragma": {"busy_timeout(5000)", "foreign_keys(1)", "query_only(1)"},
	}
)

func open(path string, settings url.Values) (*sql.DB, error) {
	return sql.Open("sqlite", address(path, settings))
}

func address(path string, settings url.Values) string {
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path // a Windows drive
	}
	return (&url.URL{Scheme: "file", OmitHost: true, Path: path, RawQuery: settings.Encode()}).String()
}

// quickCheck reads the whole file for damage. An empty file is sound.
func quickCheck(ctx context.Context, db *sql.DB, path string) error {
	var found string
	if err := db.QueryRowContext(ctx, "PRAGMA quick_check(1)").Scan(&found); err != nil {
		return err
	}
	if found != "ok" {
		return damaged(path, found)
	}
	return nil
}

func migrate(ctx context.Context, db *sql.DB, path string) error {
	folder, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return err
	}
	provider, err := goose.NewProvider(goose.DialectSQLite3, db, folder, goose.WithDisableGlobalRegistry(true))
	if err != nil {
		return fmt.Errorf("read migrations: %w", err)
	}
	has, knows, err := provider.GetVersions(ctx)
	if err != nil {
		return err
	}
	if has > knows {
		return newer(path, has, knows)
	}
	if _, err := provider.Up(ctx); err != nil {
		return fmt.Errorf("migrate from %d to %d: %w", has, knows, err)
	}
	return nil
}

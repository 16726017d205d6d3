package main

import (
	"context"
	"embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"noonbook/build/form"
	"noonbook/build/school"
)

//go:embed starter
var starterFiles embed.FS

const starterHelp = `noonbook starter lays out a new unit to edit.

  noonbook starter FOLDER

The folder gets a unit.toml with its keys explained, two short lessons that show
how a lesson is written, and an empty CSV file for each kind of record that a
class keeps. Change them, then:

  noonbook press FOLDER
`

func starter(_ context.Context, args []string, out, errs io.Writer) error {
	words, err := parse(flag.NewFlagSet("starter", flag.ContinueOnError), args, out, errs, starterHelp)
	if err != nil {
		return err
	}
	if len(words) != 1 {
		return usage{errors.New("starter: name one folder to lay the unit out in")}
	}
	folder := words[0]
	entries, err := os.ReadDir(folder)
	if err == nil && len(entries) > 0 {
		return usage{fmt.Errorf("starter: %s holds files already, such as %s; name a new folder", folder, entries[0].Name())}
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("looking into %s: %w", folder, err)
	}
	files, err := fs.Sub(starterFiles, "starter")
	if err != nil {
		return err
	}
	if err := os.CopyFS(folder, files); err != nil {
		return fmt.Errorf("writing %s: %w", folder, err)
	}
	if err := blankRecords(folder); err != nil {
		return err
	}
	fmt.Fprintf(out, "a new unit is in %s: edit unit.toml, then noonbook press %s\n", filepath.Clean(folder), filepath.Clean(folder))
	return nil
}

// blankRecords writes a CSV file for each kind of record: a line that names its
// columns, ended as spreadsheets do.
func blankRecords(folder string) error {
	for _, field := range school.Settings() {
		if field.Kind() != form.CSV {
			continue
		}
		name := filepath.Join(folder, recordsFile(field.Name()))
		head := strings.Join(field.Fields.Names(), ",") + "\r\n"
		if err := os.WriteFile(name, []byte(head), 0o666); err != nil {
			return fmt.Errorf("writing %s: %w", name, err)
		}
	}
	return nil
}

// recordsFile names the file of a setting: records.moon_log is moon-log.csv.
func recordsFile(setting string) string {
	return strings.ReplaceAll(strings.TrimPrefix(setting, "records."), "_", "-") + ".csv"
}

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
)

//go:embed starter
var starterFiles embed.FS

const starterHelp = `noonbook starter lays out a new unit to edit.

  noonbook starter FOLDER

The folder gets a unit.toml with every key explained and two short lessons that
show how a lesson is written. Change them, then:

  noonbook press --content FOLDER
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
	fmt.Fprintf(out, "a new unit is in %s: edit unit.toml, then noonbook press --content %s\n", filepath.Clean(folder), filepath.Clean(folder))
	return nil
}

package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"noonbook/build/school"
)

// A spot is where noonbook finds itself when it is started without a word, as by
// a double click in a file manager.
type spot struct {
	folder  string // to work in
	content string // folder of lessons, seen from there
}

// standing returns the spot of a unit: the working folder, or else the folder
// that the program's file lies in, since some systems start a program in the
// home folder. A folder of lessons is one with unit.toml, or one that holds a
// folder content with it.
func standing(working, program string, exists func(string) bool) (spot, bool) {
	for _, folder := range []string{working, program} {
		for _, lessons := range []string{defaultFolder, "."} {
			if folder != "" && exists(filepath.Join(folder, lessons, school.SettingsFile)) {
				return spot{folder, lessons}, true
			}
		}
	}
	return spot{}, false
}

// here is standing for this process.
func here() (spot, bool) {
	working, err := os.Getwd()
	if err != nil {
		working = ""
	}
	program := ""
	if file, err := os.Executable(); err == nil {
		program = filepath.Dir(file)
	}
	return standing(working, program, func(name string) bool {
		_, err := os.Stat(name)
		return !errors.Is(err, fs.ErrNotExist)
	})
}

// alone presses the unit of the spot and opens its handbook.
func alone(ctx context.Context, at spot, show func(file string) error, out, errs io.Writer) error {
	if err := os.Chdir(at.folder); err != nil {
		return fmt.Errorf("working in %s: %w", at.folder, err)
	}
	if err := press(ctx, []string{"--content", at.content}, out, errs); err != nil {
		return err
	}
	file, err := filepath.Abs(filepath.Join(defaultTarget, "index.html"))
	if err != nil {
		return fmt.Errorf("finding the handbook: %w", err)
	}
	if err := show(file); err != nil {
		fmt.Fprintf(out, "the handbook is ready, but no browser could be started (%v); open %s\n", err, file)
	}
	return nil
}

// show opens a file or an address with the program that the system has for it.
func show(what string) error {
	command := opener(what)
	if err := command.Start(); err != nil {
		return err
	}
	return command.Process.Release()
}

// pause keeps a window that would close with the program open until somebody
// has read what it says.
func pause(in io.Reader, out io.Writer) {
	fmt.Fprint(out, "\nPress Enter to close this window.")
	one := make([]byte, 1)
	for {
		if n, err := in.Read(one); err != nil || n > 0 && one[0] == '\n' {
			return
		}
	}
}

package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/plan"
	"noonbook/build/problem"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/content"
	"noonbook/theme"
)

// defaultFolder is read where no folder is named; without it the embedded demo
// is.
const defaultFolder = "content"

// demoRoot is what problems call the folder of the embedded demo.
const demoRoot = "demo"

// readUnit reads the folder that is chosen for that name, with what stands at some
// schools only, and lessons by the memory. Problems of the content are in the list; the
// error is what the machine did.
func readUnit(named string, memory *source.Memory) (*source.Unit, problem.List, error) {
	files, root, closing, err := open(named)
	if err != nil {
		return nil, nil, err
	}
	defer closing()
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		return nil, nil, err
	}
	unit, problems, err := memory.Read(files, root, own, placeholder.Catalogue())
	if err != nil {
		return nil, nil, err
	}
	return unit, problems, nil
}

// readHere reads the folder as it stands at its own school, for every edition: what does
// not stand there is gone. Where a problem is a fault it can be as it was read. What is
// known is not evaluated again.
func readHere(named string, memory *source.Memory, known *entry.Known) (*source.Unit, problem.List, error) {
	unit, problems, err := readUnit(named, memory)
	if err != nil {
		return nil, nil, err
	}
	here, found, err := plan.Settled(unit, unit.Settings, known)
	if here == nil {
		here = unit
	}
	return here, append(problems, found...).Sorted(), err
}

// chosen returns the folder of lessons to read: the one that is named, else the
// one that this folder holds or is, else none, which means the demo.
func chosen(named string) string {
	if named != "" {
		return named
	}
	for _, folder := range []string{defaultFolder, "."} {
		if _, err := os.Stat(filepath.Join(folder, school.SettingsFile)); !errors.Is(err, fs.ErrNotExist) {
			return folder
		}
	}
	if _, err := os.Stat(defaultFolder); !errors.Is(err, fs.ErrNotExist) {
		return defaultFolder // whose problem is that it has no unit.toml
	}
	return ""
}

// noteDemo says that the demo stands in where a folder of lessons was not found,
// so that nobody takes its numbers for those of a school.
func noteDemo(out io.Writer, named string) {
	if chosen(named) == "" {
		fmt.Fprint(out, folded(out, fmt.Sprintf("no %s and no folder %s is here, so this is the demo unit of an invented school; noonbook starter FOLDER lays out a unit of your own\n", school.SettingsFile, defaultFolder)))
	}
}

// oneFolder returns the folder that a verb is to read. It may be named by itself or
// by --content, and once.
func oneFolder(verb, flagged string, words []string) (string, error) {
	switch {
	case len(words) > 1:
		return "", usage{fmt.Errorf("%s: %q is too much; it reads one folder", verb, words[1])}
	case len(words) == 1 && flagged != "":
		return "", usage{fmt.Errorf("%s: %q is too much; --content names the folder %q already", verb, words[0], flagged)}
	case len(words) == 1 && words[0] == "":
		return "", usage{fmt.Errorf("%s: the name of the folder is empty", verb)}
	case len(words) == 1:
		return words[0], nil
	}
	return flagged, nil
}

func open(named string) (files fs.FS, root string, closing func() error, err error) {
	folder := chosen(named)
	if folder == "" {
		return content.Files(), demoRoot, func() error { return nil }, nil
	}
	dir, err := os.OpenRoot(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, "", nil, usage{fmt.Errorf("there is no folder %s", folder)}
	}
	if err != nil {
		return nil, "", nil, fmt.Errorf("opening %s: %w", folder, err)
	}
	return dir.FS(), folder, dir.Close, nil
}

// wordsOf returns the words that the settings ask for.
func wordsOf(settings form.Values) (*typeset.Words, error) {
	words, err := typeset.Language(school.Language.Of(settings), school.Measure.Of(settings) == "customary")
	if err != nil {
		return nil, err
	}
	return words.In(typeset.Manner{
		TwelveHour: school.Clock.Of(settings) == school.TwelveHour,
		MonthFirst: school.Dates.Of(settings) == school.MonthFirst,
	}), nil
}

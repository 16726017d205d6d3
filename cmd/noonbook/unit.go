package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"noonbook/build/form"
	"noonbook/build/placeholder"
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

// readUnit reads the folder, or ./content, or the demo. A list that holds
// faults comes back as the error.
func readUnit(folder string) (*source.Unit, problem.List, error) {
	files, root, closing, err := open(folder)
	if err != nil {
		return nil, nil, err
	}
	defer closing()
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		return nil, nil, err
	}
	unit, problems, err := source.Read(files, root, own, placeholder.Catalogue())
	if err != nil {
		return nil, nil, err
	}
	return unit, problems, nil
}

func open(folder string) (files fs.FS, root string, closing func() error, err error) {
	if folder == "" {
		if _, err := os.Stat(defaultFolder); errors.Is(err, fs.ErrNotExist) {
			return content.Files(), demoRoot, func() error { return nil }, nil
		}
		folder = defaultFolder
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
	return typeset.Language(school.Language.Of(settings), school.Measure.Of(settings) == "customary")
}

package output

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// WritePage writes one HTML page beside handbooks, whole or not at all, as Write does. It
// ends with a seal. Where the same bytes are there already nothing is done.
func WritePage(ctx context.Context, name string, page []byte, benchIn string) ([]Kept, error) {
	named, _, err := resolve(name)
	if err != nil {
		return nil, err
	}
	content := sealHTML(slices.Clone(page))
	same := func() bool {
		there, err := readRegular(named)
		return err == nil && bytes.Equal(there, content)
	}
	if same() {
		return nil, nil
	}
	at, err := Edition{Bench: benchIn}.at(filepath.Dir(named))
	if err != nil {
		return nil, err
	}
	b := &bench{disk: realDisk(), parent: filepath.Dir(named), at: at}
	b.parts = []part{{name: filepath.Base(named), content: func() ([]byte, error) { return content, nil }}}
	kept, err := writeAll(ctx, patience, []*bench{b})
	if err != nil && same() { // another wrote it meanwhile
		err = nil
	}
	return kept, err
}

// Trace tells in a word what a handbook's folder, or a file beside it, is. It is "" where
// that is not there, or is not whole: of a folder each file must be there that its list
// names, and no other. What is within files is not read, so a trace is quick.
func Trace(path string) string {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return ""
	case info.Mode().IsRegular():
		return strconv.FormatInt(info.Size(), 10)
	case !info.IsDir():
		return ""
	}
	list, err := readRegular(filepath.Join(path, listName))
	if err != nil {
		return ""
	}
	sums, err := readList(path)
	entries, failed := os.ReadDir(path)
	if err != nil || failed != nil {
		return ""
	}
	entries = slices.DeleteFunc(entries, isNote)
	for _, e := range entries {
		if _, known := sums[e.Name()]; !known && e.Name() != listName || !e.Type().IsRegular() {
			return ""
		}
	}
	if len(entries) != len(sums)+1 {
		return ""
	}
	return sumOf(list)
}

// OnlyOurs returns nil when a folder of handbooks holds nothing but what ours says of a
// name is noonbook's, and notes of a file manager; or is not there.
func OnlyOurs(folder string, ours func(name string) bool) error {
	entries, err := os.ReadDir(folder)
	if os.IsNotExist(err) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("looking into %s: %w", folder, err)
	}
	for _, e := range entries {
		if !isNote(e) && !ours(e.Name()) {
			return fmt.Errorf("%s %w, such as %s", folder, ErrNotOurs, strings.ToValidUTF8(e.Name(), "?"))
		}
	}
	return nil
}

package output

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"noonbook/build/file"
)

// ErrNotOurs is in the chain of the error that refuses a folder with files that
// noonbook did not write.
const ErrNotOurs = constant("holds files that noonbook did not write")

// A constant is an error that nobody can assign to, as a variable would allow.
type constant string

func (c constant) Error() string { return string(c) }

// listName is the file that lists what noonbook wrote, in the format of
// sha256sum, so that anyone can check a handbook.
const listName = ".noonbook-files"

func listOf(files []file.File) []byte {
	var list []string
	for _, f := range files {
		list = append(list, sumOf(f.Bytes)+"  "+f.Name+"\n")
	}
	slices.SortFunc(list, func(a, b string) int { return strings.Compare(a[64:], b[64:]) })
	return []byte(strings.Join(list, ""))
}

func sumOf(b []byte) string {
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:])
}

// isNote reports whether a file is a note that a system's file manager leaves in a folder
// that somebody has looked into. Nobody calls it theirs: it goes along with the folder.
func isNote(e fs.DirEntry) bool {
	name := e.Name()
	return e.Type().IsRegular() && (name == ".DS_Store" || name == "Thumbs.db" || name == "desktop.ini" || strings.HasPrefix(name, "._"))
}

// ours returns nil when the folder may be replaced: it is not there, empty, or
// holds nothing but what noonbook wrote and notes of a file manager.
func ours(folder string) error {
	info, err := os.Lstat(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err == nil && info.Mode()&fs.ModeSymlink != 0 {
		return fmt.Errorf("%s is a link that leads nowhere: %w", folder, ErrNotOurs)
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		return fmt.Errorf("looking into %s: %w", folder, err)
	}
	entries = slices.DeleteFunc(entries, isNote)
	if len(entries) == 0 {
		return nil
	}
	sums, err := readList(folder)
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, errNotPlain) {
		return fmt.Errorf("%s %w, such as %s", folder, ErrNotOurs, entries[0].Name())
	}
	if err != nil {
		return err
	}
	for _, e := range entries {
		if e.Name() == listName {
			continue
		}
		sum, known := sums[e.Name()]
		if !known {
			return fmt.Errorf("%s %w, such as %s", folder, ErrNotOurs, e.Name())
		}
		got, err := sumOfFile(filepath.Join(folder, e.Name()))
		if err != nil {
			return fmt.Errorf("checking %s: %w", e.Name(), err)
		}
		if got != sum {
			return fmt.Errorf("%s %w: %s was changed since", folder, ErrNotOurs, e.Name())
		}
	}
	return nil
}

// readList returns the checksums that a folder's list names.
func readList(folder string) (map[string]string, error) {
	content, err := readRegular(filepath.Join(folder, listName))
	if err != nil {
		return nil, fmt.Errorf("reading the list of %s: %w", folder, err)
	}
	sums := map[string]string{}
	lines := bufio.NewScanner(bytes.NewReader(content))
	for lines.Scan() {
		if sum, name, ok := strings.Cut(lines.Text(), "  "); ok {
			sums[name] = sum
		}
	}
	if err := lines.Err(); err != nil {
		return nil, fmt.Errorf("reading the list of %s: %w", folder, err)
	}
	return sums, nil
}

// sumOfFile returns the checksum of a file, and "" for what is no plain file and
// so can be none of ours.
func sumOfFile(name string) (string, error) {
	content, err := readRegular(name)
	if errors.Is(err, errNotPlain) {
		return "", nil
	}
	if err != nil {
		return "", err
	}
	return sumOf(content), nil
}

const errNotPlain = constant("no plain file")

// readRegular reads a plain file. It follows no link, and does not wait for a
// pipe to speak.
func readRegular(name string) ([]byte, error) {
	info, err := os.Lstat(name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s: %w", name, errNotPlain)
	}
	return os.ReadFile(name)
}

package output

import (
	"bufio"
	"context"
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

// Write makes the folder hold the files and nothing else, and puts the files of
// beside next to it. An error leaves all as it was; only between the steps that
// put the folder and each file beside it in place may one be new and another
// still old.
func Write(ctx context.Context, folder string, files []file.File, beside ...file.File) error {
	folder, err := resolve(folder)
	if err != nil {
		return err
	}
	if err := repair(folder); err != nil {
		return err
	}
	if err := ours(folder); err != nil {
		return err
	}
	parent := filepath.Dir(folder)
	for _, f := range beside {
		if err := ownFile(filepath.Join(parent, f.Name)); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(parent, 0o777); err != nil {
		return fmt.Errorf("making %s: %w", parent, err)
	}
	next, err := os.MkdirTemp(parent, ".noonbook-next-")
	if err != nil {
		return fmt.Errorf("making a folder in %s: %w", parent, err)
	}
	defer os.RemoveAll(next) // after the exchange, the old handbook
	if err := fill(ctx, next, files); err != nil {
		return err
	}
	place, drop, err := besides(parent, beside)
	defer drop()
	if err != nil {
		return err
	}
	if err := replace(next, folder); err != nil {
		return err
	}
	return place()
}

// resolve follows a link to a folder, so that the link itself stays.
func resolve(folder string) (string, error) {
	folder, err := filepath.Abs(folder)
	if err != nil {
		return "", fmt.Errorf("finding %s: %w", folder, err)
	}
	real, err := filepath.EvalSymlinks(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return folder, nil
	}
	if err != nil {
		return "", fmt.Errorf("finding %s: %w", folder, err)
	}
	return real, nil
}

// fill writes the files and their list into a new folder.
func fill(ctx context.Context, folder string, files []file.File) error {
	var list []string
	for _, f := range files {
		if err := ctx.Err(); err != nil {
			return fmt.Errorf("pressing was interrupted: %w", err)
		}
		if err := os.WriteFile(filepath.Join(folder, f.Name), f.Bytes, 0o666); err != nil {
			return fmt.Errorf("writing %s: %w", f.Name, err)
		}
		sum := sha256.Sum256(f.Bytes)
		list = append(list, hex.EncodeToString(sum[:])+"  "+f.Name+"\n")
	}
	slices.SortFunc(list, func(a, b string) int { return strings.Compare(a[64:], b[64:]) })
	if err := os.WriteFile(filepath.Join(folder, listName), []byte(strings.Join(list, "")), 0o666); err != nil {
		return fmt.Errorf("writing %s: %w", listName, err)
	}
	if err := os.Chmod(folder, 0o755); err != nil { // MkdirTemp keeps others out
		return fmt.Errorf("opening %s to readers: %w", folder, err)
	}
	return nil
}

// ours returns nil when the folder may be replaced: it is not there, empty, or
// holds exactly what noonbook wrote.
func ours(folder string) error {
	entries, err := os.ReadDir(folder)
	if errors.Is(err, fs.ErrNotExist) || err == nil && len(entries) == 0 {
		return nil
	}
	if err != nil {
		return fmt.Errorf("looking into %s: %w", folder, err)
	}
	sums, err := readList(filepath.Join(folder, listName))
	if errors.Is(err, fs.ErrNotExist) {
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
		content, err := os.ReadFile(filepath.Join(folder, e.Name()))
		if err != nil {
			return fmt.Errorf("checking %s: %w", e.Name(), err)
		}
		if got := sha256.Sum256(content); hex.EncodeToString(got[:]) != sum {
			return fmt.Errorf("%s %w: %s was changed since", folder, ErrNotOurs, e.Name())
		}
	}
	return nil
}

func readList(name string) (map[string]string, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	defer f.Close()
	sums := map[string]string{}
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		sum, name, ok := strings.Cut(lines.Text(), "  ")
		if ok {
			sums[name] = sum
		}
	}
	if err := lines.Err(); err != nil {
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	return sums, nil
}

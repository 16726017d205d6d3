package district

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"noonbook/build/file"
	"noonbook/build/output"
)

// A record tells what went into the handbooks of a school, and what came of it:
//
//	noonbook district
//	SUM of what went in
//	TRACE NAME
//	…
//
// a line for each folder and file, named below the folder of the district. It is in the
// school's own folder below .noonbook-district, which is the place of its lock and its
// bench too, so that no two schools wait for one another, nor two parts of a list.

const (
	recordFile = "pressed"
	recordHead = "noonbook district\n"
)

// recordOf is the folder of a school's record.
func recordOf(out, name string) string { return filepath.Join(out, recordFolder, name) }

// unchanged reports whether a school was pressed from the same before, into the same
// parts, and whether these are there.
func (d *District) unchanged(o Order, name, sum string) bool {
	text, err := os.ReadFile(filepath.Join(recordOf(o.Out, name), recordFile))
	rest, ok := strings.CutPrefix(string(text), recordHead+sum+"\n")
	if err != nil || !ok {
		return false
	}
	var parts []string
	for line := range strings.Lines(rest) {
		trace, part, ok := strings.Cut(strings.TrimSuffix(line, "\n"), " ")
		if !ok || !strings.HasSuffix(line, "\n") || !slices.Contains(o.parts(name), part) || trace != output.Trace(filepath.Join(o.Out, part)) {
			return false
		}
		parts = append(parts, part)
	}
	return len(parts) == len(o.parts(name))
}

// record writes what went into a school's handbooks, once they are in place.
func (d *District) record(o Order, name, sum string) error {
	text := recordHead + sum + "\n"
	for _, part := range o.parts(name) {
		text += output.Trace(filepath.Join(o.Out, part)) + " " + part + "\n"
	}
	at := filepath.Join(recordOf(o.Out, name), recordFile)
	if err := os.WriteFile(at+"-new", []byte(text), 0o666); err != nil {
		return fmt.Errorf("writing a record: %w", err)
	}
	if err := os.Rename(at+"-new", at); err != nil {
		return fmt.Errorf("writing a record: %w", err)
	}
	return nil
}

// parts are the names of what is written for a school.
func (o Order) parts(name string) []string {
	var parts []string
	for _, edition := range o.editions() {
		book := name + suffix(edition)
		if !o.Zip {
			parts = append(parts, book)
		}
		if o.Single {
			parts = append(parts, book+".html")
		}
		if o.Zip {
			parts = append(parts, book+".zip")
		}
	}
	return parts
}

// gone are the schools that have a record here and no row in the list.
func (d *District) gone(out string) ([]string, error) {
	listed := map[string]bool{}
	for _, r := range d.list.rows {
		listed[file.Folded(r.folder)] = true
	}
	names, err := recorded(out)
	return slices.DeleteFunc(names, func(name string) bool { return listed[file.Folded(name)] }), err
}

// recorded are the names of all schools that were ever pressed here, sorted.
func recorded(out string) ([]string, error) {
	entries, err := os.ReadDir(filepath.Join(out, recordFolder))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("looking into %s: %w", recordFolder, err)
	}
	var names []string
	for _, e := range entries {
		if e.IsDir() && !strings.HasPrefix(e.Name(), ".") { // the bench of the board's page is hidden
			names = append(names, e.Name())
		}
	}
	return names, nil
}

// mayWrite returns nil where a folder holds nothing but handbooks of a district, or is not
// there.
func mayWrite(out string) error {
	var names map[string]bool
	return output.OnlyOurs(out, func(name string) bool {
		if names == nil {
			known, _ := recorded(out) // after the folder was read: a record is there before its handbook
			_, err := os.Stat(filepath.Join(out, recordFolder))
			names = map[string]bool{recordFolder: true, boardsOwn + ".html": err == nil}
			for _, school := range known {
				for _, book := range []string{school, school + staffSuffix} {
					names[book], names[book+".html"], names[book+".zip"] = true, true, true
				}
			}
		}
		return names[name]
	})
}

// sumOf is the checksum of what all schools share: the program with its theme, the content
// folder, and what is to be written. Of the folder each file counts that press could read.
func (d *District) sumOf(o Order) ([]byte, error) {
	sum := sha256.New()
	fmt.Fprintf(sum, "%s\n%v %v %v\n", o.Program, o.Staff, o.Single, o.Zip)
	err := fs.WalkDir(d.unit.Folder, ".", func(name string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return fmt.Errorf("reading %s: %w", name, err)
		case name != "." && (file.Leaving(e.Name()) || o.Skip != nil && o.Skip(name)):
			if e.IsDir() {
				return fs.SkipDir
			}
		case !e.IsDir():
			return addFile(sum, d.unit.Folder, name)
		}
		return nil
	})
	return sum.Sum(nil), err
}

func addFile(sum hash.Hash, folder fs.FS, name string) error {
	info, err := fs.Stat(folder, name)
	if err != nil || !info.Mode().IsRegular() { // a link that leads nowhere, a pipe; nothing is read of it
		fmt.Fprintf(sum, "%q\n", name)
		return nil
	}
	content, err := fs.ReadFile(folder, name)
	if err != nil {
		return fmt.Errorf("reading %s: %w", name, err)
	}
	fmt.Fprintf(sum, "%q %d\n", name, len(content))
	sum.Write(content)
	return nil
}

// sumOfRow is the checksum of what goes into the handbooks of one school.
func (d *District) sumOfRow(shared []byte, r *row) string {
	sum := sha256.New()
	sum.Write(shared)
	fmt.Fprintf(sum, "%q\n", r.folder)
	lines := make([]string, 0, len(r.cells))
	for i, h := range d.list.heads {
		if h.field.Key != nil && i < len(r.cells) && r.cells[i].text != "" {
			lines = append(lines, fmt.Sprintf("%s %q\n", h.name, r.cells[i].text))
		}
	}
	slices.Sort(lines)
	for _, line := range lines {
		sum.Write([]byte(line))
	}
	return hex.EncodeToString(sum.Sum(nil))
}

package output

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"

	"noonbook/build/file"
)

// A file that stands beside the handbook's folder ends with a seal: the checksum
// of all before it. So a file that someone wrote or changed is known, and left
// alone. HTML holds the seal in a comment after its end, a zip in the comment
// with which the format ends (APPNOTE 6.3.10, section 4.3.16).
var seal = regexp.MustCompile(`noonbook ([0-9a-f]{64})(?:-->\n)?$`)

// SealHTML ends an HTML file with its seal.
func SealHTML(page []byte) []byte {
	page = append(page, "<!--"...)
	return append(append(page, sealOf(page)...), "-->\n"...)
}

// SealZip ends a zip with its seal. Whoever reads a zip looks for its end up to
// 64 kB before the end of the file.
func SealZip(packed []byte) []byte {
	n := len(sealOf(nil))
	packed[len(packed)-2], packed[len(packed)-1] = byte(n), byte(n>>8) // length of the comment
	return append(packed, sealOf(packed)...)
}

func sealOf(b []byte) string {
	sum := sha256.Sum256(b)
	return "noonbook " + hex.EncodeToString(sum[:])
}

// ownFile returns nil when the file may be replaced: it is not there, or bears
// the seal of what it holds.
func ownFile(name string) error {
	content, err := os.ReadFile(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("checking %s: %w", name, err)
	}
	tail := content[max(0, len(content)-len(sealOf(nil))-len("-->\n")):]
	at := seal.FindSubmatchIndex(tail)
	if at == nil || sealOf(content[:len(content)-len(tail)+at[0]]) != string(tail[at[0]:at[3]]) {
		return foreign(name)
	}
	return nil
}

// foreign is the refusal of a file; errors.Is finds ErrNotOurs in it.
type foreign string

func (name foreign) Error() string {
	return string(name) + " was not written by noonbook, or was changed since"
}

func (foreign) Is(target error) bool { return target == ErrNotOurs }

// besides writes new files under names of their own and returns a function that
// puts them in place, each in one step.
func besides(folder string, files []file.File) (place func() error, drop func(), err error) {
	var fresh []string
	drop = func() {
		for _, name := range fresh {
			os.Remove(name)
		}
	}
	for _, f := range files {
		next := filepath.Join(folder, ".noonbook-next-"+f.Name)
		fresh = append(fresh, next)
		if err := os.WriteFile(next, f.Bytes, 0o666); err != nil {
			return nil, drop, fmt.Errorf("writing %s: %w", f.Name, err)
		}
	}
	place = func() error {
		for i, f := range files {
			if err := os.Rename(fresh[i], filepath.Join(folder, f.Name)); err != nil {
				return fmt.Errorf("putting %s in place: %w", f.Name, err)
			}
		}
		return nil
	}
	return place, drop, nil
}

package output

import (
	"errors"
	"fmt"
	"io/fs"
	"regexp"
)

// A file that stands beside the handbook's folder ends with a seal: the checksum
// of all before it. So a file that someone wrote or changed is known, and left
// alone. HTML holds the seal in a comment after its end, a zip in the comment
// with which the format ends (APPNOTE 6.3.10, section 4.3.16).
var seal = regexp.MustCompile(`noonbook ([0-9a-f]{64})(?:-->\n)?$`)

// sealHTML ends an HTML file with its seal.
func sealHTML(page []byte) []byte {
	page = append(page, "<!--"...)
	return append(append(page, sealOf(page)...), "-->\n"...)
}

// sealZip ends a zip with its seal. Whoever reads a zip looks for its end up to
// 64 kB before the end of the file.
func sealZip(packed []byte) []byte {
	n := len(sealOf(nil))
	packed[len(packed)-2], packed[len(packed)-1] = byte(n), byte(n>>8) // length of the comment
	return append(packed, sealOf(packed)...)
}

func sealOf(b []byte) string {
	return "noonbook " + sumOf(b)
}

// ownFile returns nil when the file may be replaced: it is not there, or bears
// the seal of what it holds.
func ownFile(name string) error {
	content, err := readRegular(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if errors.Is(err, errNotPlain) {
		return foreign(name)
	}
	if err != nil {
		return fmt.Errorf("checking %s: %w", name, err)
	}
	if !sealed(content) {
		return foreign(name)
	}
	return nil
}

func sealed(content []byte) bool {
	tail := content[max(0, len(content)-len(sealOf(nil))-len("-->\n")):]
	at := seal.FindSubmatchIndex(tail)
	return at != nil && sealOf(content[:len(content)-len(tail)+at[0]]) == string(tail[at[0]:at[3]])
}

// foreign is the refusal of a file; errors.Is finds ErrNotOurs in it.
type foreign string

func (name foreign) Error() string {
	return string(name) + " was not written by noonbook, or was changed since"
}

func (foreign) Is(target error) bool { return target == ErrNotOurs }

//go:build unix

package output

import (
	"context"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// Who may read a handbook is what the umask says (POSIX.1-2017, umask), for
// folders and files.
func TestUmask(t *testing.T) {
	old := syscall.Umask(0)
	defer syscall.Umask(old)
	for umask, want := range map[int][2]os.FileMode{0o022: {0o755, 0o644}, 0o077: {0o700, 0o600}, 0o002: {0o775, 0o664}, 0o027: {0o750, 0o640}} {
		syscall.Umask(umask)
		parent := t.TempDir()
		if _, err := Write(context.Background(), set(parent, "x")...); err != nil {
			t.Fatal(err)
		}
		for name, mode := range map[string]os.FileMode{"book": want[0], "book/page.html": want[1], "book/" + listName: want[1], "book.html": want[1], "book-staff.zip": want[1]} {
			if info, err := os.Stat(filepath.Join(parent, name)); err != nil || info.Mode().Perm() != mode {
				t.Errorf("under umask %03o %s is %v, want %v, %v", umask, name, info.Mode(), mode, err)
			}
		}
	}
}

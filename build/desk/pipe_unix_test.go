//go:build unix

package desk_test

import (
	"net"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"noonbook/build/desk"
)

// To open a pipe is to wait for whoever writes into it; POSIX.1-2024, open(): without
// O_NONBLOCK it blocks until a thread opens the file for writing.
func TestPrintOpensNoPipe(t *testing.T) {
	dir, err := os.MkdirTemp("", "desk") // the path of a socket is a short one
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(dir)
	if err := syscall.Mkfifo(filepath.Join(dir, "1-a.md"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("1-a.md", filepath.Join(dir, "2-b.md")); err != nil {
		t.Fatal(err)
	}
	listener, err := net.Listen("unix", filepath.Join(dir, "3-c.md"))
	if err != nil {
		t.Fatal(err)
	}
	defer listener.Close()
	within(t, "a look at a folder with pipes", func() {
		if first := desk.Print(dir); desk.Print(dir) != first {
			t.Error("it differs from one look to the next")
		}
	})
	before := desk.Print(dir)
	later := time.Now().Add(time.Minute)
	if err := os.Chtimes(filepath.Join(dir, "1-a.md"), later, later); err != nil { // as if somebody wrote into it
		t.Fatal(err)
	}
	if desk.Print(dir) != before {
		t.Error("what goes through a pipe passes for a lesson that was saved")
	}
	if err := os.Remove(filepath.Join(dir, "1-a.md")); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "1-a.md"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if desk.Print(dir) == before {
		t.Error("a lesson in the place of a pipe is not seen")
	}
}

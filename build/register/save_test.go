package register

import (
	"os"
	"path/filepath"
	"testing"
)

// save writes nothing outside its folder, whichever way a name leads there, and leaves
// nothing of its own behind.
func TestSaveStaysInItsFolder(t *testing.T) {
	parent := t.TempDir()
	folder := filepath.Join(parent, "unit")
	outside := filepath.Join(parent, "x.csv")
	for _, err := range []error{os.Mkdir(folder, 0o777), os.WriteFile(outside, []byte("theirs"), 0o666), os.Symlink("../x.csv", filepath.Join(folder, "link.csv")), os.Symlink("..", filepath.Join(folder, "up"))} {
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"link.csv", "up/x.csv", "up/new.csv", "../x.csv", "/x.csv", outside, "", ".", "no/such.csv"} {
		if err := save(folder, name, []byte("ours")); err == nil {
			t.Errorf("%q was written", name)
		}
	}
	if text, err := os.ReadFile(outside); err != nil || string(text) != "theirs" {
		t.Errorf("%s, %v", text, err)
	}
	if err := save(folder, "new.csv", []byte("ours")); err != nil {
		t.Error(err)
	}
	for dir, want := range map[string]int{parent: 2, folder: 3} {
		if entries, err := os.ReadDir(dir); err != nil || len(entries) != want {
			t.Errorf("%s holds %v, %v", dir, entries, err)
		}
	}
}

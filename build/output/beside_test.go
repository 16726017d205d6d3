package output

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"noonbook/build/file"
)

func TestZip(t *testing.T) {
	files := []file.File{{Name: "b.html", Bytes: []byte("bb")}, {Name: "a.html", Bytes: bytes.Repeat([]byte("a"), 1000)}}
	one, err := Zip("handbook", files)
	if err != nil {
		t.Fatal(err)
	}
	two, err := Zip("handbook", []file.File{files[1], files[0]})
	if err != nil || !bytes.Equal(one, two) {
		t.Errorf("the order of the files shows, %v", err)
	}
	sealed := SealZip(one)
	r, err := zip.NewReader(bytes.NewReader(sealed), int64(len(sealed)))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []file.File{files[1], files[0]} {
		f := r.File[i]
		in, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		got, err := io.ReadAll(in)
		if err != nil || f.Name != "handbook/"+want.Name || !bytes.Equal(got, want.Bytes) || f.Modified.Year() != 1980 {
			t.Errorf("%s of %v holds %.20q, %v", f.Name, f.Modified, got, err)
		}
	}
}

// What stands beside the folder is replaced if noonbook wrote it, and nothing is
// written where it did not.
func TestWriteBeside(t *testing.T) {
	parent := t.TempDir()
	folder := filepath.Join(parent, "handbook")
	packed, err := Zip("handbook", handbook("x"))
	if err != nil {
		t.Fatal(err)
	}
	beside := func(words string) []file.File {
		return []file.File{{Name: "handbook.html", Bytes: SealHTML([]byte(words))}, {Name: "handbook.zip", Bytes: SealZip(bytes.Clone(packed))}}
	}
	for _, words := range []string{"one", "two"} {
		if err := Write(context.Background(), folder, handbook(words), beside(words)...); err != nil {
			t.Fatal(err)
		}
		if got := content(t, filepath.Join(parent, "handbook.html")); got[:3] != words {
			t.Errorf("beside it stands %q", got)
		}
	}
	for _, name := range []string{"handbook.html", "handbook.zip"} {
		whole := content(t, filepath.Join(parent, name))
		for _, foreign := range []string{"", "my own page", "x" + whole, whole + "x", whole[:len(whole)-20]} {
			if err := os.WriteFile(filepath.Join(parent, name), []byte(foreign), 0o666); err != nil {
				t.Fatal(err)
			}
			err := Write(context.Background(), folder, handbook("three"), beside("three")...)
			if !errors.Is(err, ErrNotOurs) {
				t.Errorf("%s, %.20q: %v", name, foreign, err)
			}
			if content(t, filepath.Join(parent, name)) != foreign || content(t, filepath.Join(folder, "index.html")) != "two" {
				t.Errorf("%s, %.20q: something was written", name, foreign)
			}
		}
		if err := os.WriteFile(filepath.Join(parent, name), []byte(whole), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if got := names(t, parent); len(got) != 3 {
		t.Errorf("the parent folder holds %v", got)
	}
}

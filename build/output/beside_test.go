package output

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
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
	sealed := sealZip(one)
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
	press := func(words string) error {
		_, err := Write(context.Background(), Edition{Folder: folder, Files: handbook(words), Single: true, Zip: true})
		return err
	}
	for _, words := range []string{"one", "two"} {
		if err := press(words); err != nil {
			t.Fatal(err)
		}
		if got := content(t, filepath.Join(parent, "handbook.html")); !strings.Contains(got, "<script>"+words+"</script>") {
			t.Errorf("beside it stands %q", got)
		}
		packed := content(t, filepath.Join(parent, "handbook.zip"))
		r, err := zip.NewReader(strings.NewReader(packed), int64(len(packed)))
		if err != nil || len(r.File) != len(handbook(words)) || r.File[0].Name != "handbook/concordance.js" {
			t.Errorf("beside it stands a zip of %v, %v", r.File, err)
		}
	}
	for _, name := range []string{"handbook.html", "handbook.zip"} {
		whole := content(t, filepath.Join(parent, name))
		for _, foreign := range []string{"", "my own page", "x" + whole, whole + "x", whole[:len(whole)-20]} {
			if err := os.WriteFile(filepath.Join(parent, name), []byte(foreign), 0o666); err != nil {
				t.Fatal(err)
			}
			if err := press("three"); !errors.Is(err, ErrNotOurs) {
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

package source

import (
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/theme"
)

// A memory stays within its bound however many folders it reads, and of the folder that it
// read last nothing is forgotten.
func TestAMemoryForgets(t *testing.T) {
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		t.Fatal(err)
	}
	m := &Memory{}
	const size = 400 << 10
	text := "```lesson\ntitle = \"A\"\n```\n" + strings.Repeat("Some words.\n\n", size/13)
	for i := range 16 {
		root := fmt.Sprint("u", i)
		if _, _, err := m.Read(fstest.MapFS{"a.md": {Data: []byte(text)}}, root, own, placeholder.Catalogue()); err != nil {
			t.Fatal(err)
		}
		if _, ok := m.recall(root+"/a.md", []byte(text)); !ok {
			t.Fatalf("the lesson of %s is forgotten", root)
		}
		held := 0
		for _, kept := range []map[string]written{m.now, m.before} {
			for _, w := range kept {
				held += len(w.src)
			}
		}
		if most := 2*mostRemembered + 3*size; held > most {
			t.Fatalf("after %d folders the memory holds %d bytes, more than %d", i+1, held, most)
		}
	}
}

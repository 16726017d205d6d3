package output

import (
	"strings"
	"testing"

	"noonbook/build/file"
)

// The school's crest is on each page and may be large; the one file holds it once.
func TestSingleHoldsTheCrestOnce(t *testing.T) {
	files := pages()
	for i, f := range files {
		if strings.HasSuffix(f.Name, ".html") {
			files[i] = file.File{Name: f.Name, Bytes: []byte(strings.Replace(string(f.Bytes), "<h1", `<img class="crest" src="crest.png" alt width="600" height="720"><h1`, 1))}
		}
	}
	bound, err := Single(files)
	if err != nil {
		t.Fatal(err)
	}
	page := string(bound)
	const open = `<svg class="crest" width="600" height="720" viewBox="0 0 600 720" aria-hidden="true">`
	first, again := open+`<image id="index/nb-crest" width="600" height="720" href="data:image/png;base64,cG5n"/></svg>`, open+`<use href="#index/nb-crest"/></svg>`
	if n, m := strings.Count(page, first), strings.Count(page, again); n != 1 || m != 2 || strings.Index(page, first) > strings.Index(page, again) {
		t.Errorf("the crest stands %d times, and %d times again", n, m)
	}
	oneFile(t, page)
}

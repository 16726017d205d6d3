package typeset

import (
	"crypto/sha256"
	"encoding/base64"
	"html/template"
	"io"
	"io/fs"

	"noonbook/theme"
)

// A DistrictPage is the page of a board, with all schools of a district. It is one file,
// beside their handbooks, and holds its own style.
type DistrictPage struct {
	Words      *Words
	Unit, Lead string
	Staff      bool // there are staff editions
	Map        template.HTML
	Rows       []DistrictRow
	Style      template.CSS // as WriteDistrict fills it
	Policy     string       // and so this
}

// A DistrictRow is one school.
type DistrictRow struct {
	School, Town, Where, Language, Term string
	Class, Staff                        []Link
	Bad                                 string // why it has no handbook
}

// WriteDistrict writes the page of a board. Its policy allows its own style alone, by its
// hash: Content Security Policy Level 3, section 2.3.1.
func WriteDistrict(out io.Writer, t *template.Template, page DistrictPage) error {
	page.Style = template.CSS(DistrictStyle())
	sum := sha256.Sum256([]byte(page.Style))
	page.Policy = "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'; base-uri 'none'; form-action 'none'"
	return t.ExecuteTemplate(out, "district.html", page)
}

// DistrictStyle returns the style sheet of the page of a board.
func DistrictStyle() []byte {
	var css []byte
	for _, name := range []string{"page.css", "drawings.css", "district.css"} {
		part, err := fs.ReadFile(theme.Files(), "styles/"+name)
		if err != nil {
			panic(err) // the files are embedded, and a test reads them
		}
		css = append(css, part...)
	}
	return css
}

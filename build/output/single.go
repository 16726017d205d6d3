package output

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"html"
	"net/url"
	"path"
	"slices"
	"strings"

	"noonbook/build/file"
	"noonbook/build/markup"
)

// Single binds the pages of a handbook into one HTML file, in the order in which
// they are given, the cover first. Style, scripts and pictures are in the file,
// and links between pages lead to places in it; files that links lead to are
// carried as links that save them. Each page is a section whose name is that of
// its file, and the anchors of a page are named "page/anchor".
//
// The pages for a projector stay out, with the links to them, and so do the small pictures
// of sheets, which are in the file themselves: they repeat what is there, and the file
// would be too large to mail.
//
// The style sheet shows the page that is asked for and prints all of them from
// the cover; a browser that cannot do that shows them one below the other.
func Single(files []file.File) ([]byte, error) {
	b := binder{files: map[string][]byte{}}
	size := 0
	for _, f := range files {
		b.files[f.Name] = f.Bytes
		size += base64.StdEncoding.EncodedLen(len(f.Bytes)) // what is no page is written so
	}
	b.out.Grow(size) // at once, since a buffer that grows is in memory twice
	cover, ok := b.files["index.html"]
	if !ok {
		return nil, fmt.Errorf("binding the handbook: it has no index.html")
	}
	for _, name := range []string{"noonbook.css", "noonbook.js", "concordance.js"} {
		if text, ok := b.files[name]; !ok || bytes.Contains(text, []byte("</")) {
			return nil, fmt.Errorf("binding the handbook: %s is missing or would end its element", name)
		}
	}
	b.head(cover)
	b.out.WriteString(`<body class="single-file"><main>`)
	for _, f := range files {
		if isPage(f.Name) && !isRoom(f) {
			b.page(f)
		}
	}
	b.out.WriteString(`</main>`)
	b.out.Write(b.finder)
	for _, name := range []string{"concordance.js", "noonbook.js"} {
		fmt.Fprintf(&b.out, "<script>%s</script>", b.files[name])
	}
	b.out.WriteString("</body></html>\n")
	return b.out.Bytes(), nil
}

func isPage(name string) bool { return path.Ext(name) == ".html" }

func isRoom(f file.File) bool { return bytes.Contains(f.Bytes, []byte(`<body class="room">`)) }

type binder struct {
	files  map[string][]byte
	out    bytes.Buffer
	finder []byte // stands once
	crest  bool   // it stands already
}

// head writes the cover's head with the style in it. The policy names each
// inline text by its hash: Content Security Policy Level 3, section 2.3.1.
func (b *binder) head(cover []byte) {
	hash := func(name string) string {
		sum := sha256.Sum256(b.files[name])
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	policy := "default-src 'none'; script-src " + hash("concordance.js") + " " + hash("noonbook.js") +
		"; style-src " + hash("noonbook.css") + "; img-src data:; base-uri 'none'; form-action 'none'"
	script := false
	for piece := range markup.Pieces(cover) {
		src, loads := piece.Attribute("src")
		kind, _ := piece.Attribute("rel")
		switch {
		case piece.Tag == "link" && kind == "expect": // the cover shows before the rest is read
		case piece.Tag == "link":
			fmt.Fprintf(&b.out, "<style>%s</style>", b.files["noonbook.css"])
		case piece.Tag == "script" && loads && src == "noonbook.js":
			script = true
		case piece.Tag == "script" && piece.End && script:
			script = false
		case piece.Tag == "meta":
			equiv, _ := piece.Attribute("http-equiv")
			b.out.Write(piece.Rewritten(func(name, value string) string {
				if equiv == "Content-Security-Policy" && name == "content" {
					return policy
				}
				return value
			}))
		case piece.Tag == "body":
			return
		default:
			b.out.Write(piece.Raw)
		}
	}
}

// page writes the body of a page as a section. The list of all pages is on the
// cover, which a link leads to; the finder stands once.
func (b *binder) page(f file.File) {
	stem := strings.TrimSuffix(f.Name, ".html")
	body, inside := markup.Piece{}, false
	drop := "" // what is left out: "finder", a details element, "page-list", "room-link" or "preview"
	for piece := range markup.Pieces(f.Bytes) {
		class, _ := piece.Attribute("class")
		switch {
		case piece.Tag == "body":
			if !piece.End {
				body = piece
				kind, _ := body.Attribute("class")
				fmt.Fprintf(&b.out, `<section class="%s" id="%s">`, html.EscapeString(strings.TrimSpace("page "+kind)), html.EscapeString(stem))
			}
			inside = !piece.End
		case !inside:
		case drop == "" && piece.Tag == "details" && class == "finder":
			drop = class
			b.finder = bytes.Clone(piece.Raw)
		case drop == "" && class == "page-list":
			drop = class
		case drop == "page-list":
			if piece.End && piece.Tag == "nav" {
				drop = ""
			}
		case drop == "" && class == "room-link":
			drop = class
		case drop == "room-link":
			if piece.End && piece.Tag != "a" {
				drop = ""
			}
		case drop == "" && class == "preview":
			drop = class
		case drop == "preview":
			if piece.End && piece.Tag == "span" {
				drop = ""
			}
		case drop == "finder":
			if b.finder = append(b.finder, piece.Raw...); piece.Tag == "details" && piece.End {
				drop = ""
			}
		case piece.Tag == "main":
			tag := bytes.Replace(piece.Raw, []byte("main"), []byte("div"), 1)
			b.out.Write(b.tag(stem, markup.Piece{Raw: tag, Tag: "div", End: piece.End}))
		case piece.Tag == "img" && class == "crest":
			b.out.Write(b.mark(piece))
		default:
			b.out.Write(b.tag(stem, piece))
		}
	}
	b.out.WriteString(`</section>`)
}

// mark writes the school's crest: the picture at the first place, and at all others
// the same again. It is on each page, and may be large.
func (b *binder) mark(img markup.Piece) []byte {
	width, _ := img.Attribute("width")
	height, _ := img.Attribute("height")
	src, _ := img.Attribute("src")
	picture := `<use href="#index/nb-crest"/>`
	if !b.crest {
		picture = fmt.Sprintf(`<image id="index/nb-crest" width="%s" height="%s" href="%s"/>`, width, height, b.data(src))
		b.crest = true
	}
	return fmt.Appendf(nil, `<svg class="crest" width="%s" height="%s" viewBox="0 0 %[1]s %[2]s" aria-hidden="true">%s</svg>`, width, height, picture)
}

// tag turns the names and targets of a tag into those of the one file.
func (b *binder) tag(stem string, piece markup.Piece) []byte {
	save := ""
	tag := piece.Rewritten(func(name, value string) string {
		switch name {
		case "id", "for":
			return stem + "/" + value
		case "aria-labelledby", "aria-describedby", "aria-controls":
			names := strings.Fields(value)
			for i := range names {
				names[i] = stem + "/" + names[i]
			}
			return strings.Join(names, " ")
		case "clip-path", "marker-start", "marker-mid", "marker-end": // of a drawing
			return strings.Replace(value, "url(#", "url(#"+stem+"/", 1)
		case "src":
			return b.data(value)
		case "href":
			target := b.target(stem, value)
			if strings.HasPrefix(target, "data:") {
				save = value
			}
			return target
		}
		return value
	})
	if slices.Contains(unquoted, piece.Tag) {
		return markup.Piece{Raw: tag, Tag: piece.Tag, End: piece.End}.Unquoted()
	}
	if save == "" {
		return tag
	}
	return bytes.Replace(tag, []byte("<a "), []byte(`<a download="`+html.EscapeString(save)+`" `), 1)
}

// unquoted are the parts of tables and drawings, of which there are tens of thousands: a
// value of one word has no quotes there. All else stays as other programs look for it.
var unquoted = strings.Fields("thead tbody tr th td data time g path circle text")

// pageList is where a page of the folder has the list of all pages. The one file has it on
// the cover.
const pageList = "#nb-pages"

// target turns where a link leads into a place in the one file.
func (b *binder) target(stem, link string) string {
	u, err := url.Parse(link)
	switch {
	case err != nil || u.Scheme != "" || u.Host != "":
		return link
	case link == pageList:
		return "#index"
	case u.Path == "":
		return "#" + stem + "/" + u.Fragment
	case path.Ext(u.Path) == ".ics" && b.files[u.Path] != nil && stem != "index":
		return "#index" // every page links the calendar; the cover carries it
	case isPage(u.Path) && b.files[u.Path] != nil:
		target := "#" + strings.TrimSuffix(u.Path, ".html")
		if u.Fragment != "" {
			target += "/" + u.Fragment
		}
		return target
	}
	return b.data(link)
}

// data carries a file of the handbook in its link (RFC 2397).
func (b *binder) data(link string) string {
	name, err := url.PathUnescape(link)
	content, ok := b.files[name]
	if err != nil || !ok {
		return link
	}
	data := []byte("data:" + file.MediaType(name) + ";base64,")
	return string(base64.StdEncoding.AppendEncode(data, content))
}

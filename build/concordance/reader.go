package concordance

import (
	"strings"

	"noonbook/build/file"
	"noonbook/build/markup"
)

// A reader takes the places and words of one page from its main part. Drawings
// and the folded working of computed blocks stay out: their words stand beside
// them too.
type reader struct {
	*collector
	leaf   leaf
	inside bool   // the main part
	skip   string // the tag of what is left out
	title  string // the tag of the heading or term that is being read
	noting bool   // the meaning of a term is being read
	read   strings.Builder
}

func (r *reader) page(f file.File) {
	r.leaf = leaf{File: f.Name, Places: []spot{}}
	r.places++
	for piece := range markup.Pieces(f.Bytes) {
		switch {
		case piece.Tag == "main":
			r.inside = !piece.End
		case !r.inside:
		case r.skip != "":
			if piece.Tag == r.skip && piece.End {
				r.skip = ""
			}
		case piece.Tag == "":
			r.text(piece.Text())
		case piece.End:
			r.closes(piece.Tag)
		default:
			r.opens(piece)
		}
	}
	r.Pages = append(r.Pages, r.leaf)
}

func (r *reader) text(s string) {
	if r.title != "" || r.noting {
		r.read.WriteString(s)
	}
	r.words(s)
}

func (r *reader) opens(piece markup.Piece) {
	switch piece.Tag {
	case "svg", "script", "figcaption":
		r.skip = piece.Tag
	case "dd":
		n := len(r.leaf.Places)
		r.noting = n > 0 && r.leaf.Places[n-1].Note == "" && strings.HasPrefix(r.leaf.Places[n-1].Anchor, TermAnchor)
		r.read.Reset()
	case "h1":
		r.title = piece.Tag
		r.read.Reset()
	case "h2", "h3", "h4", "dt":
		if id, ok := piece.Attribute("id"); ok {
			r.leaf.Places = append(r.leaf.Places, spot{Anchor: id})
			r.places++
			r.title = piece.Tag
			r.read.Reset()
		}
	case "a": // the lesson that a term is from
		r.noting = false
	}
}

func (r *reader) closes(tag string) {
	text := strings.Join(strings.Fields(r.read.String()), " ")
	last := len(r.leaf.Places) - 1
	switch {
	case tag == r.title && tag == "h1":
		r.leaf.Title = text
	case tag == r.title:
		r.leaf.Places[last].Label = text
	case tag == "dd" && last >= 0 && strings.HasPrefix(r.leaf.Places[last].Anchor, TermAnchor):
		r.leaf.Places[last].Note = text
		r.noting = false
	}
	if tag == r.title {
		r.title = ""
	}
}

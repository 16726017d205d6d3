package output

import (
	"bytes"
	"regexp"
	"slices"
	"strings"

	"noonbook/build/markup"
)

// implied are the elements whose end HTML lets out where one of these tags follows: the
// begin of another element, or the end ("/") of the one around it. A browser reads the
// same with the end tag and without it. Paragraphs and items of lists keep theirs: they are
// what people and programs look for in a page.
// Source: HTML Standard (WHATWG), 13.1.2.4 Optional tags.
var implied = map[string][]string{
	"td": strings.Fields("td th /tr"), "th": strings.Fields("td th /tr"),
	"tr": strings.Fields("tr /thead /tbody /tfoot"),
	"dt": strings.Fields("dt dd"), "dd": strings.Fields("dt dd /dl /div"),
}

// write writes a piece, and before it the end tag that waits for what follows, where that
// does not say it already.
func (b *binder) write(piece markup.Piece, raw []byte) {
	follows := piece.Tag
	if piece.End {
		follows = "/" + follows
	}
	if b.waiting != "" && !slices.Contains(implied[b.waiting], follows) {
		b.out.WriteString("</" + b.waiting + ">")
	}
	b.waiting = ""
	if piece.End && implied[piece.Tag] != nil {
		b.waiting = piece.Tag
		return
	}
	if slices.Contains(unquoted, piece.Tag) && !piece.End {
		last := len(raw)
		if bytes.HasSuffix(raw, []byte("/>")) {
			last = max(0, bytes.LastIndexByte(raw, ' ')) // the stroke would be of the last value
		}
		b.out.Write(oneWord.ReplaceAll(raw[:last], []byte(" $1=$2")))
		raw = raw[last:]
	}
	b.out.Write(raw)
}

// The parts of tables and drawings, of which there are tens of thousands, have attributes
// without quotes where the value is one word: HTML Standard, 13.1.2.3, unquoted attribute
// values.
var (
	unquoted = strings.Fields("thead tbody tr th td path circle text")
	oneWord  = regexp.MustCompile(` (role|scope|class|data-label)="([A-Za-z0-9-]+)"`)
)

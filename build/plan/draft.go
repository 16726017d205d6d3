package plan

import (
	"bytes"
	"crypto/rand"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/html"

	"noonbook/build/typeset"
)

// A draft is a page whose markup is written out with marks for the slots.
type draft struct {
	plan   *Plan
	name   string
	lesson int // whose date the page's placeholders take
	slots  []slot
	markup []byte

	pictures int // hand-drawn ones that the page holds so far
}

// mark returns the text that stands for the slot until the page is cut.
func (d *draft) mark(s slot) string {
	d.slots = append(d.slots, s)
	return d.plan.token + strconv.Itoa(len(d.slots)-1) + "z"
}

// newToken returns letters that nobody can write into a lesson or a setting, however
// they are escaped there, since nobody can guess them. They are cut out again, so that
// the same lessons still give the same bytes. There is no digit among them, round which
// words are set otherwise.
func newToken() string {
	return "nb" + strings.Map(func(c rune) rune {
		if c >= '2' && c <= '7' { // of base32
			return 'a' + c - '2'
		}
		return unicode.ToLower(c)
	}, rand.Text())
}

// write renders the page, the data of one of the kinds that typeset knows.
func (d *draft) write(page any) error {
	var out bytes.Buffer
	if err := typeset.Write(&out, d.plan.templates, page); err != nil {
		return fmt.Errorf("page %s: %w", d.name, err)
	}
	d.markup = d.plan.words.TypesetMarkup(bytes.Map(visible, out.Bytes()))
	return nil
}

// visible turns a control character, which an author can write as &#27; and which HTML
// does not allow, into the sign for what cannot be shown.
func visible(c rune) rune {
	if unicode.IsControl(c) && !strings.ContainsRune("\t\n\f\r", c) {
		return utf8.RuneError
	}
	return c
}

// minified makes markup small in ways that hold wherever a slot may be filled:
// end tags and quotes stay, since what follows a mark is not known.
func minified(markup []byte) ([]byte, error) {
	page := html.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true}
	var small bytes.Buffer
	err := page.Minify(minify.New(), &small, bytes.NewReader(markup), nil)
	return small.Bytes(), err
}

// cut minifies the draft and cuts it at its marks.
func (d *draft) cut() (page, error) {
	written := bytes.Count(d.markup, []byte(d.plan.token))
	small, err := minified(d.markup)
	if err != nil {
		return page{}, fmt.Errorf("page %s: %w", d.name, err)
	}
	marks := regexp.MustCompile(regexp.QuoteMeta(d.plan.token) + `(\d+)z`)
	p := page{name: d.name}
	last := 0
	for _, m := range marks.FindAllSubmatchIndex(small, -1) {
		if bytes.LastIndexByte(small[:m[0]], '<') > bytes.LastIndexByte(small[:m[0]], '>') {
			return page{}, fmt.Errorf("page %s: a slot stands inside a tag: %s", d.name, small[max(0, m[0]-60):m[1]])
		}
		n, err := strconv.Atoi(string(small[m[2]:m[3]]))
		if err != nil {
			return page{}, fmt.Errorf("page %s: %w", d.name, err)
		}
		if n >= len(d.slots) {
			return page{}, fmt.Errorf("page %s: there is no slot %d", d.name, n)
		}
		p.ready = append(p.ready, small[last:m[0]])
		p.slots = append(p.slots, d.slots[n])
		last = m[1]
	}
	p.ready = append(p.ready, small[last:])
	if len(p.slots) != written {
		return page{}, fmt.Errorf("page %s: %d marks were written, %d arrived", d.name, written, len(p.slots))
	}
	return p, nil
}

// fill writes the page for one school, its slots in their order.
func (p page) fill(dst []byte, s *pressing) []byte {
	s = s.onPage()
	for i, ready := range p.ready {
		dst = append(dst, ready...)
		if i < len(p.slots) {
			dst = p.slots[i](dst, s)
		}
	}
	return dst
}

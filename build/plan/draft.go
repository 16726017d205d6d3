package plan

import (
	"bytes"
	"crypto/rand"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"

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
	shown  any // the data of one of the kinds of pages that typeset knows
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

// of ends a draft: it shows the data of one of the kinds of pages.
func (d *draft) of(page any) *draft {
	d.shown = page
	return d
}

// page returns the page, as it was before if it shows the same.
func (d *draft) page(before []page) (page, error) {
	at := slices.IndexFunc(before, func(p page) bool { return p.name == d.name })
	if at >= 0 && reflect.DeepEqual(before[at].shown, d.shown) {
		same := before[at]
		same.slots = d.slots
		return same, nil
	}
	if err := d.write(); err != nil {
		return page{}, err
	}
	return d.cut()
}

// write writes out the markup.
func (d *draft) write() error {
	var out bytes.Buffer
	if err := typeset.Write(&out, d.plan.templates, d.shown); err != nil {
		return fmt.Errorf("page %s: %w", d.name, err)
	}
	d.markup = d.plan.words.TypesetMarkup(typeset.Visible(out.Bytes()))
	return nil
}

// minified makes markup small in ways that hold wherever a slot may be filled:
// end tags and quotes stay, since what follows a mark is not known.
func minified(markup []byte) ([]byte, error) {
	page := html.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true}
	var small bytes.Buffer
	small.Grow(len(markup))
	err := page.Minify(minify.New(), &small, bytes.NewBuffer(bytes.Clone(markup)), nil) // which it changes
	return small.Bytes(), err
}

// cut minifies the draft and cuts it at its marks.
func (d *draft) cut() (page, error) {
	written := bytes.Count(d.markup, []byte(d.plan.token))
	small, err := minified(d.markup)
	if err != nil {
		return page{}, fmt.Errorf("page %s: %w", d.name, err)
	}
	p := page{name: d.name, shown: d.shown, slots: d.slots}
	for {
		ready, rest, found := bytes.Cut(small, []byte(d.plan.token))
		p.ready = append(p.ready, ready)
		if !found {
			break
		}
		if bytes.LastIndexByte(ready, '<') > bytes.LastIndexByte(ready, '>') {
			return page{}, fmt.Errorf("page %s: a slot stands inside a tag: %s", d.name, ready[max(0, len(ready)-60):])
		}
		number, rest, _ := bytes.Cut(rest, []byte("z"))
		n, err := strconv.Atoi(string(number))
		if err != nil || n >= len(d.slots) {
			return page{}, fmt.Errorf("page %s: there is no slot %s", d.name, number)
		}
		p.order = append(p.order, n)
		small = rest
	}
	if len(p.order) != written {
		return page{}, fmt.Errorf("page %s: %d marks were written, %d arrived", d.name, written, len(p.order))
	}
	return p, nil
}

// fill writes the page for one school, its slots in their order, and says where each of the
// ready bytes begins.
func (p page) fill(dst []byte, s *pressing) (filled []byte, begins []int) {
	s = s.onPage()
	begins = make([]int, len(p.ready))
	for i, ready := range p.ready {
		begins[i] = len(dst)
		dst = append(dst, ready...)
		if i < len(p.order) {
			dst = p.slots[p.order[i]](dst, s)
		}
	}
	return dst, begins
}

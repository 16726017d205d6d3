package source

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"

	"noonbook/build/problem"
)

// An Inset is a hand-drawn picture that is part of its page, so that it has the page's
// letters and colours, in the dark and on paper too. It is an SVG whose shapes say by
// classes of the theme what they are, and which holds nothing else: what follows is the
// whole of it. Its markup is written anew from what was understood; no byte of the file
// is copied. An SVG that holds anything else stays a picture in a file of its own.
type Inset struct {
	title  string   // of the file, in words
	box    string   // viewBox
	pieces []string // the markup within; between two of them belongs the prefix of the ids
}

// What bounds an inset: it adds to the weight of its page, and what others refer to is
// drawn again each time.
const (
	maxInset      = 64 << 10 // bytes
	maxShapes     = 4000
	maxDepth      = 24
	maxReused     = 60 // shapes within defs, markers and clip paths together
	leastWide     = 40.0
	mostWide      = 400.0 // units across; one is about a millimetre, as in computed drawings
	whatInsetsAre = "shapes, words, groups, markers and clip paths with classes of the theme, one unit a millimetre"
)

// InsetRoles are the classes that a hand-drawn picture may use, in the order in which
// they are explained; theme/styles/drawings.css says how they look.
func InsetRoles() []string {
	return strings.Fields("ink bold thin broken card edge shade shadow sun accent ray dot lit night name figure leader strong large")
}

// A meaning is what an attribute's value may be.
type meaning struct {
	re   *regexp.Regexp
	what string
}

var (
	oneNumber  = meaning{regexp.MustCompile(`^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$`), "a number without a unit"}
	manyNumber = meaning{regexp.MustCompile(`^[\s\d.,eE+-]+$`), "numbers"}
	aPath      = meaning{regexp.MustCompile(`^[\s\d.,eE+\-MmZzLlHhVvCcSsQqTtAa]+$`), "the steps of a path"}
	aTransform = meaning{regexp.MustCompile(`^(\s*(translate|rotate|scale|matrix|skewX|skewY)\s*\([\s\d.,eE+-]*\)\s*,?)+\s*$`), "translate, rotate, scale, matrix or a skew"}
	anID       = meaning{regexp.MustCompile(`^[A-Za-z_][\w.-]*$`), "a name of letters and digits"}
	aHash      = meaning{regexp.MustCompile(`^#[A-Za-z_][\w.-]*$`), "a # and an id of the drawing"}
	aURL       = meaning{regexp.MustCompile(`^url\(#[A-Za-z_][\w.-]*\)$`), "url(#id) with an id of the drawing"}
	anAnchor   = meaning{regexp.MustCompile(`^(start|middle|end)$`), "start, middle or end"}
	anOrient   = meaning{regexp.MustCompile(`^(auto|auto-start-reverse|[+-]?\d+(\.\d+)?)$`), "auto, auto-start-reverse or degrees"}
)

// anywhere are the attributes that every element but title and desc may have, besides class.
var anywhere = map[string]meaning{"id": anID, "transform": aTransform, "clip-path": aURL}

var (
	markable = with("marker-start", aURL, "marker-mid", aURL, "marker-end", aURL)
	lettered = with("x", manyNumber, "y", manyNumber, "dx", manyNumber, "dy", manyNumber, "text-anchor", anAnchor)
)

// insetElements are the elements of an inset with the attributes of each.
var insetElements = map[string]map[string]meaning{
	"svg": {}, "title": {}, "desc": {},
	"g": with("text-anchor", anAnchor), "defs": {}, "clipPath": {},
	"path":     join(markable, with("d", aPath)),
	"line":     join(markable, with("x1", oneNumber, "y1", oneNumber, "x2", oneNumber, "y2", oneNumber)),
	"polyline": join(markable, with("points", manyNumber)),
	"polygon":  join(markable, with("points", manyNumber)),
	"rect":     with("x", oneNumber, "y", oneNumber, "width", oneNumber, "height", oneNumber, "rx", oneNumber, "ry", oneNumber),
	"circle":   with("cx", oneNumber, "cy", oneNumber, "r", oneNumber),
	"ellipse":  with("cx", oneNumber, "cy", oneNumber, "rx", oneNumber, "ry", oneNumber),
	"text":     lettered,
	"tspan":    lettered,
	"use":      with("href", aHash, "x", oneNumber, "y", oneNumber),
	"marker":   with("viewBox", manyNumber, "refX", oneNumber, "refY", oneNumber, "markerWidth", oneNumber, "markerHeight", oneNumber, "orient", anOrient),
}

func with(pairs ...any) map[string]meaning {
	m := map[string]meaning{}
	for i := 0; i < len(pairs); i += 2 {
		m[pairs[i].(string)] = pairs[i+1].(meaning)
	}
	return m
}

func join(a, b map[string]meaning) map[string]meaning {
	m := maps.Clone(a)
	maps.Copy(m, b)
	return m
}

// A hindrance is why an SVG stays a picture of its own, with its place in the file.
type hindrance struct {
	what         string
	line, column int
}

func (h hindrance) Error() string { return h.what }

func hinders(format string, args ...any) error { return hindrance{what: fmt.Sprintf(format, args...)} }

// inset notes that a picture is a hand-drawn one, if src is one or its file is known to be
// one. A drawing that has classes of the theme and yet stays a file of its own is told to
// its author, once.
func (r *reader) inset(name string, ref reference, src []byte) bool {
	if ref.image == nil || !strings.EqualFold(path.Ext(name), ".svg") {
		return false
	}
	inset, known := r.insets[name]
	if !known && src != nil {
		var meant bool
		var err error
		inset, meant, err = readInset(src)
		var why hindrance
		if errors.As(err, &why) && meant {
			r.problems.Warn(problem.Place{File: path.Join(r.root, name), Line: why.line, Column: why.column},
				"the drawing stays a picture with colours of its own, since it holds %s; in the colours of the page are %s", why.what, whatInsetsAre)
		}
		if r.insets == nil {
			r.insets = map[string]*Inset{}
		}
		r.insets[name] = inset
	}
	if inset == nil {
		return false
	}
	ref.lead.Inset = inset
	return true
}

// readInset reads an SVG as an inset. Where it is none, meant says whether its author
// wanted one: some shape has a class of the theme. The error is then a hindrance. The
// drawing has passed svgFault.
func readInset(src []byte) (inset *Inset, meant bool, err error) {
	r := insetReader{decoder: xml.NewDecoder(bytes.NewReader(src)), inset: &Inset{}, ids: map[string]bool{}}
	if err = r.read(); err == nil && len(src) > maxInset {
		err = hinders("%d bytes, where %d are the most", len(src), maxInset)
	}
	if err == nil {
		err = r.whole()
	}
	if err == nil && !r.meant {
		err = hinders("no class of the theme")
	}
	if err != nil {
		return nil, r.meant, hindrance{err.Error(), max(1, r.line), max(1, r.column)}
	}
	r.cut()
	return r.inset, true, nil
}

type insetReader struct {
	decoder      *xml.Decoder
	inset        *Inset
	out          bytes.Buffer // of the piece that is written
	open         []string
	roles        []string // of each open element, its own or those of the group that it is in
	meant        bool
	shapes       int
	reused       int
	ids          map[string]bool // whether something may refer to it: what refers to nothing itself, so that no drawing grows with each turn
	wanted       []string        // ids that something refers to
	line, column int
}

// read goes through the file to its end even where something hinders, so that it knows
// what the author meant; it returns the first hindrance.
func (r *insetReader) read() error {
	var first error
	for {
		line, column := r.decoder.InputPos()
		token, err := r.decoder.Token()
		if errors.Is(err, io.EOF) {
			return first
		}
		if err == nil {
			err = r.token(token)
		}
		if err != nil && first == nil {
			first, r.line, r.column = err, line, column
		}
		var fault *xml.SyntaxError
		if errors.As(err, &fault) || len(r.open) > 10*maxDepth {
			return first
		}
	}
}

func (r *insetReader) token(token xml.Token) error {
	switch token := token.(type) {
	case xml.StartElement:
		for _, a := range token.Attr {
			if a.Name.Local == "class" {
				r.meant = r.meant || slices.ContainsFunc(strings.Fields(a.Value), func(c string) bool { return slices.Contains(InsetRoles(), c) })
			}
		}
		r.open = append(r.open, token.Name.Local)
		roles, err := r.rolesOf(token)
		r.roles = append(r.roles, roles)
		if err != nil {
			return err
		}
		return r.start(token)
	case xml.EndElement:
		r.open, r.roles = r.open[:max(0, len(r.open)-1)], r.roles[:max(0, len(r.roles)-1)]
		if name := token.Name.Local; name != "svg" && !hidden(name) {
			r.out.WriteString("</" + name + ">")
		}
	case xml.CharData:
		return r.text(string(token))
	case xml.Directive:
		return hinders("a document type")
	case xml.ProcInst:
		if token.Target != "xml" {
			return hinders("an instruction <?%s?>", token.Target)
		}
	}
	return nil
}

// rolesOf returns the classes of an element; one without is what its group is.
func (r *insetReader) rolesOf(e xml.StartElement) (string, error) {
	for _, a := range e.Attr {
		if a.Name.Local != "class" || a.Name.Space != "" {
			continue
		}
		for class := range strings.FieldsSeq(a.Value) {
			if !slices.Contains(InsetRoles(), class) {
				return "", hinders("class %q", class)
			}
		}
		return strings.Join(strings.Fields(a.Value), " "), nil
	}
	if len(r.roles) == 0 {
		return "", nil
	}
	return r.roles[len(r.roles)-1], nil
}

// hidden reports whether the page says in words of its own what the element says.
func hidden(element string) bool { return element == "title" || element == "desc" }

func (r *insetReader) start(e xml.StartElement) error {
	name := e.Name.Local
	allowed, known := insetElements[name]
	switch r.shapes++; {
	case e.Name.Space != svgSpace || !known || name == "svg" && len(r.open) > 1:
		return hinders("<%s>", name)
	case len(r.open) == 1 && name != "svg":
		return hinders("<%s> outside <svg>", name)
	case len(r.open) > maxDepth:
		return hinders("elements within one another, more than %d deep", maxDepth)
	case r.shapes > maxShapes:
		return hinders("more than %d elements", maxShapes)
	case hidden(name):
		return nil
	case name == "svg" && r.inset.box != "":
		return hinders("a second <svg>")
	case name == "svg":
		return r.root(e.Attr)
	}
	within := slices.ContainsFunc(r.open[:len(r.open)-1], func(n string) bool { return n == "defs" || n == "marker" || n == "clipPath" })
	if within {
		r.reused++
	}
	if r.reused > maxReused {
		return hinders("more than %d elements in defs, markers and clip paths", maxReused)
	}
	r.out.WriteString("<" + name)
	if roles := r.roles[len(r.roles)-1]; roles != "" && !holds(name) {
		r.out.WriteString(` class="` + roles + `"`)
	}
	seen := map[string]bool{}
	for _, a := range e.Attr {
		key := a.Name.Local
		if a.Name.Space == "xmlns" || key == "xmlns" || key == "space" || key == "class" && a.Name.Space == "" {
			continue // how the file is written; classes are known
		}
		mean, ok := allowed[key]
		if !ok && !hidden(name) {
			mean, ok = anywhere[key]
		}
		switch {
		case !ok || a.Name.Space != "" && key != "href":
			return hinders("%s= of <%s>", key, name)
		case seen[key]:
			return hinders("%s= of <%s> twice", key, name)
		case within && (mean == aURL || mean == aHash):
			return hinders("%s= within defs, a marker or a clip path", key)
		}
		seen[key] = true
		if err := r.attribute(key, strings.TrimSpace(a.Value), mean, within || name == "marker" || name == "clipPath"); err != nil {
			return err
		}
	}
	r.out.WriteByte('>')
	return nil
}

// attribute writes one attribute; before an id the piece ends.
func (r *insetReader) attribute(key, value string, mean meaning, reusable bool) error {
	if !mean.re.MatchString(value) {
		return hinders("%s=%.60q, want %s", key, value, mean.what)
	}
	r.out.WriteString(" " + key + `="`)
	switch mean {
	case anID:
		if _, taken := r.ids[value]; taken {
			return hinders("id %q twice", value)
		}
		r.ids[value] = reusable
		r.cut()
	case aHash:
		r.wanted = append(r.wanted, value[1:])
		r.out.WriteByte('#')
		r.cut()
		value = value[1:]
	case aURL:
		value = strings.TrimPrefix(value, "url(#")
		r.wanted = append(r.wanted, strings.TrimSuffix(value, ")"))
		r.out.WriteString("url(#")
		r.cut()
	default:
		value = strings.Join(strings.Fields(value), " ")
	}
	r.out.WriteString(value + `"`)
	return nil
}

// holds reports whether an element only holds those that draw, and these have its classes.
func holds(element string) bool {
	return slices.Contains([]string{"g", "defs", "clipPath", "marker"}, element)
}

// root reads the outermost element, of which its box is kept. What it says of
// its size and how it is read aloud is the page's to say.
func (r *insetReader) root(attributes []xml.Attr) error {
	for _, a := range attributes {
		switch key := a.Name.Local; {
		case a.Name.Space == "xmlns" || key == "xmlns" || slices.Contains([]string{"width", "height", "version", "role", "lang", "space", "aria-label", "aria-labelledby"}, key):
		case key == "viewBox" && manyNumber.re.MatchString(a.Value):
			r.inset.box = strings.Join(numbersOf(a.Value), " ")
		case key == "class":
		default:
			return hinders("%s= of <svg>", key)
		}
	}
	box := numbersOf(r.inset.box)
	if len(box) != 4 {
		return hinders("no viewBox of four numbers")
	}
	if w, h := cssPixels(box[2]), cssPixels(box[3]); !(w >= leastWide && w <= mostWide && h > 0 && h <= 2*mostWide) {
		return hinders("a viewBox %s units wide and %s high, where a drawing has %v to %v and a unit is a millimetre", box[2], box[3], leastWide, mostWide)
	}
	return nil
}

func numbersOf(list string) []string {
	return strings.FieldsFunc(list, func(c rune) bool { return strings.ContainsRune(" ,\t\r\n", c) })
}

var escapeInset = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;")

func (r *insetReader) text(s string) error {
	in := ""
	if len(r.open) > 0 {
		in = r.open[len(r.open)-1]
	}
	switch {
	case in == "title" && len(r.open) == 2:
		r.inset.title = strings.Join(strings.Fields(r.inset.title+s), " ")
	case hidden(in):
	case in == "text" || in == "tspan":
		r.out.WriteString(escapeInset.Replace(strings.Map(oneLine, s)))
	case strings.TrimSpace(s) != "":
		return hinders("words outside <text>: %.40q", strings.TrimSpace(s))
	}
	return nil
}

func oneLine(c rune) rune {
	if c == '\n' || c == '\t' || c == '\r' {
		return ' '
	}
	return c
}

// whole looks for what could only be known at the end.
func (r *insetReader) whole() error {
	if r.inset.box == "" {
		return hinders("no <svg>")
	}
	for _, id := range r.wanted {
		if !r.ids[id] {
			return hinders("a reference to #%s, which is not in its defs", id)
		}
	}
	return nil
}

func (r *insetReader) cut() {
	r.inset.pieces = append(r.inset.pieces, r.out.String())
	r.out.Reset()
}

// Append writes the inset as markup of a page. Its ids begin with the prefix, which no other
// picture of the page has. Alt is what a reader hears who does not see it, title its name;
// the file's own title is taken for an empty one. An inset without either is an ornament.
func (i *Inset) Append(dst []byte, prefix, title, alt string) []byte {
	dst = append(append(dst, `<svg class="drawing drawn" viewBox="`...), i.box...)
	if title == "" && alt != "" {
		title = i.title
	}
	if title == "" {
		title, alt = alt, ""
	}
	if title == "" {
		dst = append(dst, `" aria-hidden="true">`...)
	} else {
		dst = append(append(dst, `" role="img"><title>`...), escapeInset.Replace(title)...)
		dst = append(dst, `</title>`...)
	}
	if alt != "" && alt != title {
		dst = append(append(dst, `<desc>`...), escapeInset.Replace(alt)...)
		dst = append(dst, `</desc>`...)
	}
	for n, piece := range i.pieces {
		if n > 0 {
			dst = append(dst, prefix...)
		}
		dst = append(dst, piece...)
	}
	return append(dst, `</svg>`...)
}

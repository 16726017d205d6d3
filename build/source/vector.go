package source

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
)

// An SVG that a link opens is a page of its own, which can run scripts and load from
// the network: SVG 2, section 2, "conformance". So only what draws is carried along.

const (
	svgSpace = "http://www.w3.org/2000/svg"
	rdfSpace = "http://www.w3.org/1999/02/22-rdf-syntax-ns#"
)

// drawingElements are the elements of SVG that draw, describe or group: SVG 2, appendix F, less
// what runs, moves, leads away or holds another language (script, foreignObject,
// animations, a, audio, video, iframe, canvas).
var drawingElements = words(`svg g defs symbol use switch title desc metadata view style
	path rect circle ellipse line polyline polygon text tspan textPath image
	linearGradient radialGradient stop pattern clipPath mask marker filter
	feBlend feColorMatrix feComponentTransfer feComposite feConvolveMatrix feDiffuseLighting
	feDisplacementMap feDistantLight feDropShadow feFlood feFuncA feFuncB feFuncG feFuncR
	feGaussianBlur feMerge feMergeNode feMorphology feOffset fePointLight feSpecularLighting
	feSpotLight feTile feTurbulence`)

func words(text string) map[string]bool {
	set := map[string]bool{}
	for word := range strings.FieldsSeq(text) {
		set[word] = true
	}
	return set
}

var (
	// outwards finds in a style what loads something: url() of anything but a place in
	// the drawing itself, @import, and a backslash, which could hide either.
	outwards = regexp.MustCompile(`(?i)url\(\s*["']?[^#"'\s]|@import|image-set|\\`)
	// withinFile is what a reference may be: a place in the drawing, or a picture that is
	// written out in it (RFC 2397).
	withinFile = regexp.MustCompile(`^\s*(#|data:image/(png|jpeg|gif|webp);base64,)`)
)

// svgFault returns what an SVG holds that no handbook carries, with its 1-based line
// and column; "" where there is nothing.
func svgFault(src []byte) (what string, line, column int) {
	decoder := xml.NewDecoder(bytes.NewReader(src))
	var style []byte // of the style element that is open; comments in it part no word
	inStyle := false
	for {
		line, column = decoder.InputPos()
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return "", 0, 0
		}
		if err != nil {
			line, column = decoder.InputPos()
			return "what is no sound XML: " + strings.TrimPrefix(err.Error(), "XML syntax error on "), line, column
		}
		switch token := token.(type) {
		case xml.StartElement:
			if what = elementFault(token); what != "" {
				return what, line, column
			}
			inStyle = inStyle || token.Name.Local == "style"
		case xml.CharData:
			if inStyle {
				style = append(style, token...)
			}
		case xml.EndElement:
			if found := outwards.Find(style); found != nil {
				return fmt.Sprintf("a style that may load something: %s", found), line, column
			}
			if token.Name.Local == "style" {
				style, inStyle = nil, false
			}
		case xml.Directive:
			if !plainDoctype(token) {
				return "declarations of its own, which can stand for anything", line, column
			}
		case xml.ProcInst:
			if token.Target != "xml" {
				return fmt.Sprintf("an instruction <?%s?>", token.Target), line, column
			}
		}
	}
}

// plainDoctype reports whether a directive names a document type and declares nothing.
func plainDoctype(d xml.Directive) bool {
	return bytes.HasPrefix(bytes.ToUpper(d), []byte("DOCTYPE")) && !bytes.ContainsRune(d, '[')
}

func elementFault(e xml.StartElement) string {
	name := e.Name.Local
	switch space := e.Name.Space; {
	case space == svgSpace || space == "" || space == "svg":
		if !drawingElements[name] {
			return fmt.Sprintf("<%s>", name)
		}
	case space != rdfSpace && (strings.Contains(space, "www.w3.org") || strings.Contains(space, "mozilla")):
		return fmt.Sprintf("another language that browsers read: <%s>", name) // HTML, MathML, events
	default:
		return "" // the notes of a drawing program
	}
	for _, a := range e.Attr {
		key := strings.ToLower(a.Name.Local)
		switch {
		case strings.HasPrefix(key, "on"):
			return fmt.Sprintf("a script: %s=", a.Name.Local)
		case (key == "href" || key == "src") && !withinFile.MatchString(a.Value):
			return fmt.Sprintf("a reference to something outside it: %.60s", a.Value)
		case key == "base" || key == "xmlns" && a.Name.Space == "" && a.Value != svgSpace:
			return fmt.Sprintf("%s=%q", a.Name.Local, a.Value)
		case outwards.MatchString(a.Value) && key != "href" && key != "src" && a.Name.Space == "":
			return fmt.Sprintf("a style that may load something: %s=", a.Name.Local)
		}
	}
	return ""
}

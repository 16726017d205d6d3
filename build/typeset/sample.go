package typeset

import (
	"html/template"
	"regexp"
)

// samplePattern finds what an explanation quotes from a file: "A4", date = "next full
// Moon", lesson_times = ["9:10-10:00"].
var samplePattern = regexp.MustCompile(`(?:[\w.]+ = )?(?:\["[^"\]]*"(?:, "[^"\]]*")*\]|"[^"]*")`)

// markSamples writes a text as HTML in which what it quotes from a file is code, so that
// its quotes stay straight.
func markSamples(s string) template.HTML {
	var b []byte
	last := 0
	for _, m := range samplePattern.FindAllStringIndex(s, -1) {
		b = append(b, template.HTMLEscapeString(s[last:m[0]])...)
		b = append(b, "<code>"+template.HTMLEscapeString(s[m[0]:m[1]])+"</code>"...)
		last = m[1]
	}
	return template.HTML(append(b, template.HTMLEscapeString(s[last:])...))
}

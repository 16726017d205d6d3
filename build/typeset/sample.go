package typeset

import (
	"html/template"
	"regexp"
	"strings"
)

// samplePattern finds what an explanation quotes from a file: "A4", date = "next full
// Moon", lesson_times = ["9:10-10:00"].
var samplePattern = regexp.MustCompile(`(?:[\w.]+ = )?(?:\["[^"\]]*"(?:, "[^"\]]*")*\]|"[^"]*")`)

// markSamples writes a text as HTML in which what it quotes from a file is code, so that
// its quotes stay straight.
func markSamples(s string) template.HTML { return template.HTML(appendSamples(nil, s)) }

func appendSamples(dst []byte, s string) []byte {
	last := 0
	if strings.Contains(s, `"`) { // a look before the pattern
		for _, m := range samplePattern.FindAllStringIndex(s, -1) {
			dst = append(dst, template.HTMLEscapeString(s[last:m[0]])...)
			dst = append(dst, "<code>"+template.HTMLEscapeString(s[m[0]:m[1]])+"</code>"...)
			last = m[1]
		}
	}
	return append(dst, template.HTMLEscapeString(s[last:])...)
}

package source

import (
	"bytes"
	"sort"
	"strings"
	"unicode/utf8"

	"noonbook/build/problem"
)

// text checks that a file is UTF-8 and brings it to the form that the parser
// reads: no byte order mark, line feeds alone. Lines and columns stay the same.
// It returns nil after reporting bytes that are not UTF-8.
func (r *reader) text(file string, src []byte) []byte {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	if bytes.IndexByte(src, '\r') >= 0 {
		src = bytes.ReplaceAll(src, []byte("\r\n"), []byte("\n"))
		src = bytes.ReplaceAll(src, []byte("\r"), []byte("\n"))
	}
	if len(src) == 0 {
		return []byte{} // an empty file is a text too, and nil says that there is none
	}
	if utf8.Valid(src) {
		return src
	}
	at := 0
	for {
		c, size := utf8.DecodeRune(src[at:])
		if c == utf8.RuneError && size <= 1 {
			break
		}
		at += size
	}
	place := newLines(file, src).place(at)
	r.problems.Add(place, "byte 0x%02x is not UTF-8; save the file with the encoding UTF-8", src[at])
	return nil
}

// lines turns byte offsets of a text into places.
type lines struct {
	file   string
	starts []int
}

func newLines(file string, src []byte) lines {
	l := lines{file, []int{0}}
	for i, c := range src {
		if c == '\n' {
			l.starts = append(l.starts, i+1)
		}
	}
	return l
}

func (l lines) place(offset int) problem.Place {
	line := sort.SearchInts(l.starts, offset+1)
	return problem.Place{File: l.file, Line: line, Column: offset - l.starts[line-1] + 1}
}

// escapes reports whether a file system error says that a path or link leads
// out of the folder. os.Root refuses those with an error that it does not
// export, so only its text tells.
func escapes(err error) bool {
	return err != nil && strings.Contains(err.Error(), "escapes")
}

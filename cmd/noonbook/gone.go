package main

import (
	"fmt"
	"io"
	"strings"

	"noonbook/build/source"
)

// tellGone says which lessons the handbook goes without, and what went with them.
func tellGone(out io.Writer, unit *source.Unit) {
	if len(unit.Gone) > 0 {
		fmt.Fprintf(out, "left out: %s\n", strings.Join(unit.Gone, ", "))
	}
}

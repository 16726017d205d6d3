//go:build unix && !race

package source_test

import (
	"fmt"
	"strings"
	"syscall"
	"testing"
	"testing/fstest"
	"time"

	"noonbook/build/placeholder"
	"noonbook/build/source"
)

// processorTime is what this process has used so far, whatever else the machine does.
func processorTime(t *testing.T) time.Duration {
	t.Helper()
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		t.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// Half a million bytes of anything are read within two seconds of a processor: what
// opens and never closes, what is within one another, and what there is too much of.
func TestAnyLessonIsReadInTime(t *testing.T) {
	const size = 510 << 10
	fill := func(s string) string { return strings.Repeat(s, size/len(s)+1)[:size] }
	many := func(format string, of func(i int) any) string {
		var b strings.Builder
		for i := 0; b.Len() < size; i++ {
			fmt.Fprintf(&b, format, of(i))
		}
		return b.String()[:size]
	}
	number := func(i int) any { return i }
	for name, text := range map[string]string{
		"braces": fill("{"), "braces on lines": fill("{ {\n"), "braces and quotes": fill(`{"`),
		"brackets": fill("["), "pictures": fill("!["), "targets": fill("[a]("), "empty links": fill("[]("), "links": fill("[a](b) "), "references": fill("[a][b] "), "titles": fill(`[a](b "`),
		"stars": fill("*"), "emphasis": fill("*a_ "), "strong": fill("a**b"), "in links": fill("*[a*](b) "), "ticks": many("e%s", func(i int) any { return strings.Repeat("`", i) }),
		"headings": fill("# a\n"), "underlined": fill("a\n-\n"), "comments": fill("<!--"), "instructions": fill("<?"), "tags": fill("<a "), "sections": fill("<![CDATA["),
		"deep lists": fill("- "), "deep numbers": fill("1. "), "mixed": fill("- > 1. "), "deep quotes": fill("> "), "steps": many("%s- a\n", func(i int) any { return strings.Repeat("  ", i) }),
		"quotes": fill(strings.Repeat("> ", 99) + "a\n"), "quoted lists": fill(strings.Repeat("> - ", 45) + "a\n"), "a list": fill("- a\n"),
		"a wide table": strings.Repeat("|a", 60000) + "|\n" + strings.Repeat("|-", 60000) + "|\n", "short rows": strings.Repeat("|a", 10000) + "|\n" + strings.Repeat("|-", 10000) + "|\n" + fill("|x\n")[:400<<10],
		"definitions": many("[a%d]: b\n", number), "one definition": fill("[a]: b\n"), "its uses": "[x]: y\n\n" + fill("[x] "), "entities": fill("&a"),
		"never closed": fill("```answer\n"), "deep blocks": many("%s\n", func(i int) any { return strings.Repeat("~", 1000-min(990, i)) + "staff" }), "nearly blocks": fill("’’’answer\n"), "cautions": fill("```caution\nx\n```\n"),
		"computed": fill("```compute sun-day\n```\n"), "facts": fill("{sun-day.noon}\n\n"), "nearly facts": fill("{sun-dya.noon}\n\n"), "pictures that are not there": fill("![a](b.png)\n\n"), "anchors that are not there": fill("[a](#x)\n\n"),
		"words": fill("word "), "lines": fill("a\n"), "no lines": fill("\n"), "tabs": fill("\ta\n"), "spaces": fill(" "), "backslashes": fill(`\`), "one word": fill("a"), "NUL": fill("\x00"),
	} {
		begin := processorTime(t)
		_, problems, err := source.Read(fstest.MapFS{"unit.toml": {Data: []byte(settings)}, "a.md": {Data: []byte(head + text)}}, "u", own(t), placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		if took := processorTime(t) - begin; took > 2*time.Second {
			t.Errorf("%s: %.1f s, %d problems", name, took.Seconds(), len(problems))
		}
	}
}

package main

import (
	"strings"
	"testing"
)

func TestParseFault(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"whole", "a-b: sign\nx.go\n- one\n+ two\nWhy so.", ""},
		{"dropped", "a-b: dropped check\nx.go 2/3\n- one\n+", ""},
		{"no kind", "a-b\nx.go\n- one\n+ two", "not an id and a kind"},
		{"other kind", "a-b: luck\nx.go\n- one\n+ two", `the kind "luck" is none of`},
		{"which", "a-b: sign\nx.go 4/3\n- one\n+ two", "which of how many"},
		{"same", "a-b: sign\nx.go\n- one\n+ one", "the line itself"},
		{"order", "a-b: sign\nx.go\n+ one\n- two", "begins with -"},
		{"short", "a-b: sign\nx.go\n- one", "at least four lines"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := parseFault(splitParagraphs(c.text)[0])
			switch {
			case c.want == "" && err != nil:
				t.Errorf("got %v", err)
			case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
				t.Errorf("got %v, want something with %q", err, c.want)
			}
		})
	}
}

func TestApply(t *testing.T) {
	const text = "a\n\tif b {\n\t\tc\n\t}\n\tif b {\n"
	for _, c := range []struct {
		name string
		f    Fault
		want string
	}{
		{"once", Fault{Which: 1, Of: 1, Was: "c", Now: "d"}, "a\n\tif b {\n\t\td\n\t}\n\tif b {\n"},
		{"second", Fault{Which: 2, Of: 2, Was: "if b {", Now: "if !b {"}, "a\n\tif b {\n\t\tc\n\t}\n\tif !b {\n"},
		{"dropped", Fault{Which: 1, Of: 1, Was: "c"}, "a\n\tif b {\n\n\t}\n\tif b {\n"},
		{"gone", Fault{Which: 1, Of: 1, Was: "z", Now: "y"}, ""},
		{"more often", Fault{Which: 1, Of: 1, Was: "if b {", Now: "if {"}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := c.f.apply(text)
			if got != c.want || (err == nil) != (c.want != "") {
				t.Errorf("got %q, %v, want %q", got, err, c.want)
			}
		})
	}
}

func TestReadEvents(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       verdict
	}{
		{"passes", `{"Action":"pass","Package":"p","Test":"T","Elapsed":1}`, verdict{}},
		{"fails", `{"Action":"fail","Package":"p","Test":"T/sub"}{"Action":"fail","Package":"p","Test":"T"}`, verdict{failed: true, by: "p T/sub"}},
		{"time", `{"Action":"output","Package":"p","Test":"T","Output":"panic: test timed out after 1s\n"}{"Action":"fail","Package":"p"}`, verdict{failed: true, by: "p T", limit: "time"}},
		{"memory", `{"Action":"output","Package":"p","Output":"fatal error: runtime: cannot allocate memory\n"}{"Action":"fail","Package":"p","Test":"T"}`, verdict{failed: true, by: "p T", limit: "memory"}},
		{"killed", `{"Action":"output","Package":"p","Test":"T","Output":"signal: killed\n"}{"Action":"fail","Package":"p"}`, verdict{failed: true, by: "p T", killed: true}},
		{"unbuilt", `{"Action":"build-output","Output":"no\n"}{"Action":"build-fail"}{"Action":"fail","Package":"p","FailedBuild":"p"}`, verdict{unbuilt: "no\n "}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := readEvents([]byte(c.text))
			got.took = nil
			if err != nil || got.failed != c.want.failed || got.by != c.want.by || got.limit != c.want.limit || got.killed != c.want.killed || got.unbuilt != c.want.unbuilt {
				t.Errorf("got %+v, %v, want %+v", got, err, c.want)
			}
		})
	}
}

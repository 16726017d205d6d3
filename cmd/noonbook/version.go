package main

import (
	"runtime/debug"
	"strings"
)

// version says in one line which noonbook this is, from what the Go tools wrote
// into it. A program that was built without a record of its source, as those of a
// release are, says that it does not know.
func version(info *debug.BuildInfo, ok bool) string {
	if !ok {
		return "noonbook, version unknown: it was built without a record of its source"
	}
	setting := map[string]string{}
	for _, s := range info.Settings {
		setting[s.Key] = s.Value
	}
	words := []string{"noonbook"}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		words[0] += " " + v
	}
	if revision := setting["vcs.revision"]; revision != "" {
		words = append(words, "revision "+revision)
	}
	if len(words) == 1 && words[0] == "noonbook" {
		words = append(words, "version unknown: it was built without a record of its source")
	}
	if at := setting["vcs.time"]; at != "" {
		words = append(words, "of "+at)
	}
	if setting["vcs.modified"] == "true" {
		words = append(words, "changed since then")
	}
	if info.GoVersion != "" {
		words = append(words, "built with "+info.GoVersion)
	}
	return strings.Join(words, ", ")
}

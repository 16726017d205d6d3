package main

import (
	"runtime/debug"
	"strings"
	"testing"
)

// The version is that of Go's record of the program, and unknown where there is none.
func TestVersion(t *testing.T) {
	if out := must(t, "--version"); !strings.HasPrefix(out, "noonbook") || strings.Count(out, "\n") != 1 {
		t.Errorf("it says %q", out)
	}
	setting := func(pairs ...string) (list []debug.BuildSetting) {
		for i := 0; i < len(pairs); i += 2 {
			list = append(list, debug.BuildSetting{Key: pairs[i], Value: pairs[i+1]})
		}
		return list
	}
	const unknown = "noonbook, version unknown: it was built without a record of its source"
	for _, c := range []struct {
		name string
		info debug.BuildInfo
		ok   bool
		want string
	}{
		{"no record", debug.BuildInfo{}, false, unknown},
		{"an empty record", debug.BuildInfo{}, true, unknown},
		{"a build in a folder without history", debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "(devel)"}}, true, unknown + ", built with go1.26.8"},
		{"a release", debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "v1.2.0"}}, true, "noonbook v1.2.0, built with go1.26.8"},
		{"a build in a clone", debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "(devel)"},
			Settings: setting("vcs", "git", "vcs.revision", "0123abcd", "vcs.time", "2027-04-20T10:00:00Z", "vcs.modified", "false")}, true,
			"noonbook, revision 0123abcd, of 2027-04-20T10:00:00Z, built with go1.26.8"},
		{"a build in a clone with changes", debug.BuildInfo{Main: debug.Module{Version: "v0.0.0-20270420100000-0123abcd+dirty"}, Settings: setting("vcs.revision", "0123abcd", "vcs.modified", "true")}, true,
			"noonbook v0.0.0-20270420100000-0123abcd+dirty, revision 0123abcd, changed since then"},
	} {
		if got := version(&c.info, c.ok); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

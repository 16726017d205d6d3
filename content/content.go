// Package content is the demo unit: the lessons, settings and pictures of an
// invented school, embedded so that the command works in an empty folder.
//
//	unit, problems, err := source.Read(content.Files(), "content", own, catalogue)
package content

import "embed"

//go:embed *.toml *.md *.svg *.csv
var files embed.FS

// Files returns the demo unit.
func Files() embed.FS { return files }

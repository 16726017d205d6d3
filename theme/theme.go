// Package theme holds what a designer or a translator touches, and nothing else:
//
//	templates/     a file for each kind of page, and the parts that they share
//	styles/        the style sheet: every page, then what only some kinds have
//	script/        what a page gains from a script (page/, joined into one file), the script of the pages for a projector, and that of the pages to type on
//	words/         what noonbook says, a file for each language
//	explanations/  keys and placeholders explained, by their English
//	pages/         lessons that stand in for parts that a unit leaves out
//
// build/typeset makes pages of it.
package theme

import (
	"bytes"
	"embed"
	"io/fs"
)

//go:embed templates styles words explanations pages
var files embed.FS

// Files holds the folders templates, styles, words, explanations and pages.
func Files() fs.FS { return files }

//go:embed script/page
var scripts embed.FS

// Script returns the script of the pages: classic scripts, joined, since a page opened
// from a disk may not load modules or fetch files. Nothing on a page needs them.
func Script() []byte {
	const folder = "script/page"
	names, err := scripts.ReadDir(folder)
	if err != nil {
		panic(err) // the folder is embedded
	}
	var joined []byte
	for _, name := range names {
		part, err := scripts.ReadFile(folder + "/" + name.Name())
		if err != nil {
			panic(err)
		}
		joined = append(joined, part...)
	}
	return joined
}

//go:embed script/room.js
var roomScript []byte

// RoomScript returns the script of the pages for a projector.
func RoomScript() []byte { return bytes.Clone(roomScript) }

//go:embed script/form.js
var formScript []byte

// FormScript returns the script of the pages at the desk on which a school types.
func FormScript() []byte { return bytes.Clone(formScript) }

// Package file holds what every stage from the plan to the disk hands on: the
// files of a handbook, and what kind each is by its name.
//
//	cover := file.File{Name: "index.html", Bytes: page}
//	kind := file.MediaType(cover.Name) // "text/html"
package file

// A File is one file of a handbook. All lie in one folder, so that a name holds no
// slash.
type File struct {
	Name  string
	Bytes []byte
}

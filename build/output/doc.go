// Package output writes a pressed handbook to disk, whole or not at all.
//
//	err := output.Write(ctx, "handbook", files)
//	if errors.Is(err, output.ErrNotOurs) { … } // the folder holds someone's files
//
// The files are written to a new folder beside the old one, which then takes
// its place in one step of the file system where the system has such a step
// (Linux), and in two renames elsewhere; a press that was cut off between the
// two is repaired by the next. A folder is replaced only if every file in it is
// one that noonbook wrote and nobody has changed since; a list of checksums in
// the folder tells.
//
// Single makes one HTML file of the pages, to mail, and Zip one file of the
// folder. They stand beside the folder, and end with a seal by which noonbook
// knows its own.
package output

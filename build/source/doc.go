// Package source reads a content folder into a Unit: the settings of the
// school and the lessons, each parsed once into a tree. The example of Read shows
// how it is called.
//
// A lesson is CommonMark with pipe tables. What is special about it becomes
// nodes of goldmark's tree: Aside for caution, answer and staff blocks, Block
// for compute blocks, Inline for {name.fact} in a sentence. They and all
// problems know the file, line and column they came from.
//
// The folder is read through fs.FS; given the FS of an os.Root, no file outside
// the folder can be reached, by links of the file system included.
package source

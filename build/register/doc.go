// Package register makes the pages at the desk on which a school types what is true of
// it, and what its class measured, and writes that into the files of the unit.
//
//	r := register.New()
//	r.Folder = func() string { return "content" }
//	r.Press = again
//	r.Today = today
//	desk.Offer(r) // answers below /desk/
//
// The page of the settings is made from their description, school.Settings: a new key
// is on it by itself. Each kind of records has a page too, a row for each line of its
// CSV file. Pages work without their script.
//
// A page that is sent back is checked as proof checks the files, by the same code and
// in its words, which stand beside the line that they are about. As long as one line
// is wrong nothing is written. Only values that were changed are written, and comments,
// order and line ends of the file stay (form.Form.Rewrite, and build/starter for a
// unit that is new).
//
// Nothing is lost: a page carries the checksum of the file that it was made from. Where
// the file is another by now, nothing is written. The page comes back with what was
// typed, follows the file in what was not, and tells the difference. A file is written
// beside the old one and takes its place in one step of the file system.
//
// Who may ask at all the desk decides (build/desk/guard.go). To write, a request must
// also carry the token of its page, which only somebody who was given the page has, be
// of the kind that a form sends, and have a bounded size.
package register

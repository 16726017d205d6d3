// Package district presses one unit for all schools of a list.
//
//	list, problems := district.ReadList("schools.csv", bytes) // columns and rows
//	d, problems, err := district.New(unit, list)              // beside unit.toml
//	tally, err := d.Press(ctx, district.Order{Out: "district", Staff: true})
//
// A list is a CSV file, a row a school. Each head is a key of unit.toml, or one of two
// names of our own: "folder" names the folder of the school's handbook, "town" is said on
// the board's page. A cell that is empty leaves what unit.toml says. A row with a mistake
// is told by the place of its cell, and keeps no other school from its handbook.
//
// Every school's handbook is, byte for byte, the one that a folder with its settings in
// unit.toml would give. Reading and planning are done once for all schools that are alike
// in what those look at (alike.go); the rest is done for each. Nothing of a school stays
// in memory but its row.
//
// What went into a handbook is kept, as a checksum, beside it in a hidden folder
// (record.go). A school for which it is the same, and whose handbook is there, is left
// alone. Each school has a record, a lock and a bench of its own, so that several parts of
// a list may be pressed at once, by different computers, into one folder. No order between
// schools matters.
//
// The board's page (page.go, map.go) is made from the list alone and so is the same from
// every part.
package district

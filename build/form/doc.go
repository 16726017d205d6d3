// Package form describes what may be written in a TOML table and checks what
// was written. The settings of a school, the lesson block, the arguments of a
// placeholder in a block, in a sentence or on the command line are all forms,
// so that each key is documented once and each mistake reads alike.
//
//	f := form.Form{{Name: "latitude", Kind: form.Number, Unit: "deg", Min: -90, Max: 90, Required: true, Doc: "…"}}
//	values, faults := f.Read([]byte("latitude = 95"))
//	// faults[0]: line 1, column 12, latitude 95° is outside −90° to 90°
//
// A dotted name reaches into nested tables: "school.latitude" is the key
// latitude of the table [school].
package form

package source_test

import (
	"fmt"
	"io/fs"
	"log"
	"os"

	"noonbook/build/placeholder"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/theme"
)

func ExampleRead() {
	folder, err := os.OpenRoot("../../testdata/units/south")
	if err != nil {
		log.Fatal(err)
	}
	defer folder.Close()
	own, err := fs.Sub(theme.Files(), "pages") // for the parts that the folder leaves out
	if err != nil {
		log.Fatal(err)
	}
	unit, problems, err := source.Read(folder.FS(), "south", own, placeholder.Catalogue())
	if err != nil {
		log.Fatal(err)
	}
	for _, p := range problems {
		fmt.Println(p)
	}
	fmt.Println(school.Name.Of(unit.Settings))
	for _, l := range unit.Lessons {
		if l.Part() == source.PartLesson {
			fmt.Printf("%d %s, %s\n", l.Number, l.Title(), l.File)
		}
	}
	// Output:
	// Tussock Point School
	// 1 Shadows here, south/1-shadows.md
	// 2 The strip, south/2-strip.md
	// 3 The sky at night, south/3-sky.md
}

package district

import (
	"fmt"
	"path"
	"strings"

	"noonbook/build/file"
	"noonbook/build/problem"
	"noonbook/build/school"
)

// What is noonbook's own in the folder of a district.
const (
	boardsOwn    = "index"              // the board's page, which is an HTML file
	recordFolder = ".noonbook-district" // what went into each handbook
	staffSuffix  = "-staff"
)

// nameFolders gives each row the folder of its handbook: the one that it names, else the
// name of the school. The first to have a name keeps it.
func (d *District) nameFolders() {
	lines := map[string]int32{file.Folded(boardsOwn): 0} // by the names that are taken
	for i := range d.list.rows {
		r := &d.list.rows[i]
		name, at, given := d.named(r)
		fault := unsound(name, given)
		if fault == "" {
			fault = clash(lines, name, given)
		}
		if fault != "" && !r.broken {
			r.wrong.Add(at, "%s", fault)
		}
		if fault != "" {
			continue
		}
		lines[file.Folded(name)], lines[file.Folded(name+staffSuffix)] = r.cells[0].line, r.cells[0].line
		r.folder = name
	}
}

// named returns the name of a row's folder, and whether the row gives it.
func (d *District) named(r *row) (name string, at problem.Place, given bool) {
	if name, at, _ = d.list.cell(r, folderHead); name != "" {
		return name, at, true
	}
	name, at, _ = d.list.cell(r, school.Name.Name())
	if name == "" {
		name = school.Name.Of(d.base)
	}
	return plainName(name), at, false
}

// unsound says why no handbook's folder can have the name.
func unsound(name string, given bool) string {
	err := file.Sound(name)
	ending := strings.ToLower(path.Ext(name))
	switch {
	case name == "" && !given:
		return "no folder can be named after this school; name one in a column " + folderHead
	case given && err != nil:
		return folderHead + ": " + err.Error()
	case ending == ".html" || ending == ".zip":
		return folderHead + " " + name + " ends as a file does; leave out " + ending
	case err != nil || len(name) > longestName:
		return fmt.Sprintf("the folder %.40s… would have a name that not every computer takes; name another in a column %s", name, folderHead)
	}
	return ""
}

// clash says whose name it is already.
func clash(lines map[string]int32, name string, given bool) string {
	for _, mine := range []string{name, name + staffSuffix} {
		line, taken := lines[file.Folded(mine)]
		switch {
		case !taken:
		case line == 0:
			return "the folder " + name + " would be in the way of the board's page; name another in a column " + folderHead
		case given:
			return fmt.Sprintf("the folder %s is in the way of that of line %d; each school has one of its own, and may have %s%s beside it", name, line, name, staffSuffix)
		default:
			return fmt.Sprintf("the folder %s would be that of line %d too; name both in a column %s", name, line, folderHead)
		}
	}
	return ""
}

// longestName leaves room behind a name for -staff.html.
const longestName = 200

// apart are letters that have no letter below a mark to fall back on.
var apart = strings.NewReplacer("ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "đ", "d", "ð", "d", "þ", "th", "ł", "l", "ı", "i")

// plainName makes the name of a folder: small letters and digits of ASCII, with hyphens.
func plainName(name string) string {
	var b strings.Builder
	gap := false
	for _, c := range file.Decomposed(apart.Replace(strings.ToLower(name))) {
		switch {
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
			if gap && b.Len() > 0 {
				b.WriteByte('-')
			}
			gap = false
			b.WriteRune(c)
		case c == '\'' || c == '’' || c == '.' || c >= 0x300 && c < 0x370: // St. Mary's, and marks of letters
		default:
			gap = true
		}
	}
	return b.String()
}

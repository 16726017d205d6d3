package plan

import (
	"bytes"
	"fmt"
	"slices"

	"noonbook/build/encode"
	"noonbook/build/file"
	"noonbook/build/problem"
	"noonbook/build/result"
)

// tableFiles writes a CSV file for every table that a block of the pages shows,
// notes its name in the table, and returns the files. Tables that are alike
// share one file.
func (p *Plan) tableFiles(s *pressing, problems *problem.List) []file.File {
	var files []file.File
	taken := map[string]int{}         // tables by their stem
	named := map[string]string{}      // file names by stem and bytes
	filed := map[int][]result.Table{} // by evaluation: most are shown twice, in the room too
	for i, a := range p.asks {
		if !a.block {
			continue
		}
		if tables, known := filed[a.first]; known {
			s.results[i].Tables = tables
			continue
		}
		tables := slices.Clone(s.results[i].Tables) // the result may be shared with other asks
		for k := range tables {
			if len(tables[k].Rows) == 0 {
				continue
			}
			var b bytes.Buffer
			if err := encode.TableFile(&b, tables[k], s.words); err != nil {
				problems.Warn(a.At, "%s: %v", a.Entry.Name, err)
				continue
			}
			stem := a.Entry.Name + "-" + tables[k].Name
			name, known := named[stem+"\n"+b.String()]
			if !known {
				taken[stem]++
				if name = stem + ".csv"; taken[stem] > 1 {
					name = fmt.Sprintf("%s-%d.csv", stem, taken[stem])
				}
				named[stem+"\n"+b.String()] = name
				files = append(files, file.File{Name: name, Bytes: b.Bytes()})
			}
			tables[k].File = name
		}
		filed[a.first], s.results[i].Tables = tables, tables
	}
	return files
}

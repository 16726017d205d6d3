package drawing

import "math"

// A Paper is a sheet of printing paper, upright, in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// PaperOf returns the paper of that name; A4 is 210 × 297 mm (ISO 216), Letter
// 8½ × 11 inches.
func PaperOf(name string) Paper {
	if name == "Letter" {
		return Paper{name, 215.9, 279.4}
	}
	return Paper{"A4", 210, 297}
}

// Across returns the paper laid on its long side.
func (p Paper) Across() Paper { return Paper{p.Name, p.Height, p.Width} }

// PaperMargin is the border that printers cannot reach, common practice; HeadStrip is what
// the head of a sheet takes below it, and CheckStrip the height at the foot that the check
// bar takes.
const (
	PaperMargin = 10.0
	HeadStrip   = 9.0
	CheckStrip  = 14.0
	CheckBar    = 100.0 // length of the bar that shows whether a print is to size
)

// Area returns what a sheet leaves for its drawing, below its head.
func (p Paper) Area() (width, height float64) {
	width, height = p.Whole()
	return width, height - HeadStrip
}

// Whole returns what a sheet with a slim head leaves: one whose words are in the margin,
// so that a drawing that needs the paper has it.
func (p Paper) Whole() (width, height float64) {
	return p.Width - 2*PaperMargin, p.Height - 2*PaperMargin - CheckStrip
}

// Fits reports whether a drawing goes on the paper at true size, if need be below a slim
// head.
func (p Paper) Fits(d Drawing) bool { return holds(d, p.Whole) }

func holds(d Drawing, area func() (width, height float64)) bool {
	w, h := area()
	return d.Width <= w+1e-9 && d.Height <= h+1e-9
}

// A Sheet is a piece of paper with a drawing, or a part of a larger one, at true
// size. Left and Top say which part: the point of the drawing at the corner of
// the paper's area.
type Sheet struct {
	Paper         Paper
	Drawing       Drawing
	Left, Top     float64
	Row, Column   int // from 1, of a drawing laid out over several sheets
	Rows, Columns int
	Slim          bool // its head has no strip of its own
}

// Area returns what the sheet leaves for its drawing, and how far that is below the upper
// edge of the paper.
func (s Sheet) Area() (width, height, top float64) {
	if s.Slim {
		width, height = s.Paper.Whole()
		return width, height, PaperMargin
	}
	width, height = s.Paper.Area()
	return width, height, PaperMargin + HeadStrip
}

// TileOverlap is how far neighbouring sheets repeat each other, so that they can
// be laid over one another to the matching marks.
const TileOverlap = 10.0

// Sheets lays a drawing out at true size: on one sheet where it fits, upright or
// across, and over several otherwise. Its head is slim where the drawing wants the room.
func (p Paper) Sheets(d Drawing) []Sheet {
	for _, on := range []Paper{p, p.Across()} {
		if on.Fits(d) {
			return []Sheet{{Paper: on, Drawing: d, Row: 1, Column: 1, Rows: 1, Columns: 1, Slim: !holds(d, on.Area)}}
		}
	}
	if tiles(p.Across(), d) < tiles(p, d) {
		p = p.Across()
	}
	w, h := p.Whole()
	columns, rows := count(d.Width, w), count(d.Height, h)
	var sheets []Sheet
	for row := range rows {
		for column := range columns {
			sheets = append(sheets, Sheet{
				Paper: p, Drawing: d,
				Left: float64(column) * (w - TileOverlap), Top: float64(row) * (h - TileOverlap),
				Row: row + 1, Column: column + 1, Rows: rows, Columns: columns, Slim: true,
			})
		}
	}
	return sheets
}

func tiles(p Paper, d Drawing) int {
	w, h := p.Whole()
	return count(d.Width, w) * count(d.Height, h)
}

// count returns how many sheets of the given size cover a length.
func count(length, size float64) int {
	return max(1, int(math.Ceil((length-TileOverlap)/(size-TileOverlap)-1e-9)))
}

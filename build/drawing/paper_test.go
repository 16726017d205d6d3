package drawing

import "testing"

func TestSheetsCoverTheDrawing(t *testing.T) {
	for _, name := range []string{"A4", "Letter"} {
		paper := PaperOf(name)
		for _, size := range []Point{{100, 100}, {195, 240}, {240, 150}, {400, 150}, {200, 600}, {500, 500}} {
			d := Drawing{Width: size.X, Height: size.Y}
			sheets := paper.Sheets(d)
			if len(sheets) == 0 || len(sheets) != sheets[0].Rows*sheets[0].Columns {
				t.Fatalf("%v on %s: %d sheets", size, name, len(sheets))
			}
			last := sheets[len(sheets)-1]
			w, h, _ := last.Area()
			if last.Left+w < size.X || last.Top+h < size.Y {
				t.Errorf("%v on %s: the last sheet ends at %v, %v", size, name, last.Left+w, last.Top+h)
			}
			// One row or column fewer would not do.
			if n := last.Columns; n > 1 && float64(n-1)*(w-TileOverlap)+TileOverlap >= size.X {
				t.Errorf("%v on %s: %d columns are too many", size, name, n)
			}
		}
	}
}

func TestPaperSizes(t *testing.T) {
	// A4: ISO 216. Letter: 8½ × 11 in of 25.4 mm.
	if p := PaperOf("A4"); p.Width != 210 || p.Height != 297 {
		t.Errorf("A4 is %v", p)
	}
	if p := PaperOf("Letter"); p.Width != 8.5*25.4 || p.Height != 11*25.4 {
		t.Errorf("Letter is %v", p)
	}
}

package drawing

// A Span is a stretch of the drawing from one height to another, in millimetres from
// the top.
type Span struct{ Top, Bottom float64 }

// Keep room for rows of labels above what stands below it. How many rows they need
// depends on the language: what they leave free at the top of the span is taken out of
// the drawing, and all that lies below moves up.
func (d *Drawing) Room(top, bottom float64) { d.Spare = append(d.Spare, Span{top, bottom}) }

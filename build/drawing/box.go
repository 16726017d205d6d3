package drawing

// A Box is a stretch of the drawing that something covers.
type Box struct{ Left, Top, Right, Bottom float64 }

// Meets reports whether the boxes overlap.
func (b Box) Meets(c Box) bool {
	return b.Left < c.Right && c.Left < b.Right && b.Top < c.Bottom && c.Top < b.Bottom
}

package almanac

// Forget drops what is remembered and fitted, so that a benchmark measures the work
// and not the memory of the round before.
func Forget() {
	for _, s := range sheets() {
		for i := range s.pieces {
			s.pieces[i].Store(nil)
		}
	}
	for i := range quarters {
		quarters[i].Store(0)
	}
	for i := range solarYears {
		seasonYears[i].Store(nil)
		solarYears[i].Store(nil)
		lunarYears[i].Store(nil)
	}
}

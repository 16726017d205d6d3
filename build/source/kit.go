package source

// sharing reports things that several share of whom there is one.
func (r *reader) sharing(l *Lesson) {
	for i, row := range BlockKit.Of(l.Block) {
		if KitSharedBy.In(row) && KitEach.Of(row) == "class" {
			r.problems.Add(l.RowPlace(BlockKit, i, KitSharedBy), `lesson: kit: shared_by goes with each = "group" or "pupil"; the class has the thing to itself`)
		}
	}
}

package school

// What a school may choose for its clock, its dates and its seasons, other than what
// holds without a choice.
const (
	TwelveHour      = "12-hour"
	MonthFirst      = "month first"
	CalendarSeasons = "calendar"
)

package entry

import (
	"noonbook/build/form"
	"noonbook/compute/place"
)

const (
	From form.Key[place.Date] = "from"
	To   form.Key[place.Date] = "to"
)

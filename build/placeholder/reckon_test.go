package placeholder_test

import (
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
)

// entries are the placeholders that the tests evaluate.
func entries() []entry.Entry { return placeholder.Catalogue() }

// reckon evaluates a placeholder of the topic at a school.
func reckon(t *testing.T, school, name, date string, given ...string) result.Result {
	t.Helper()
	return entrytest.Reckon(t, entries(), school, name, date, given...)
}

func reckonLog(t *testing.T, school, name, text string, given ...string) result.Result {
	t.Helper()
	return entrytest.ReckonLog(t, entries(), school, name, text, given...)
}

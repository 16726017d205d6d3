package worlds_test

import (
	"testing"

	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/placeholder/worlds"
	"noonbook/build/result"
)

// entries are the placeholders that the tests evaluate.
func entries() []entry.Entry { return worlds.Entries() }

// reckon evaluates a placeholder of the topic at a school.
func reckon(t *testing.T, school, name, date string, given ...string) result.Result {
	t.Helper()
	return entrytest.Reckon(t, entries(), school, name, date, given...)
}

func complaint(t *testing.T, name, date string, given ...string) string {
	t.Helper()
	return entrytest.Complaint(t, entries(), name, date, given...)
}

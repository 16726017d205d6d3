package class_test

import (
	"testing"

	"noonbook/build/placeholder/class"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
)

// entries are the placeholders that the tests evaluate.
func entries() []entry.Entry { return class.Entries() }

// reckon evaluates a placeholder of the topic at a school.
func reckon(t *testing.T, school, name, date string, given ...string) result.Result {
	t.Helper()
	return entrytest.Reckon(t, entries(), school, name, date, given...)
}

package moon_test

import (
	"testing"

	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/placeholder/moon"
	"noonbook/build/result"
)

// entries are the placeholders that the tests evaluate.
func entries() []entry.Entry { return moon.Entries() }

// reckon evaluates a placeholder of the topic at a school.
func reckon(t *testing.T, school, name, date string, given ...string) result.Result {
	t.Helper()
	return entrytest.Reckon(t, entries(), school, name, date, given...)
}

func tryLog(t *testing.T, school, name, text string, given ...string) (result.Result, error) {
	t.Helper()
	return entrytest.TryLog(t, entries(), school, name, text, given...)
}

func reckonLog(t *testing.T, school, name, text string, given ...string) result.Result {
	t.Helper()
	return entrytest.ReckonLog(t, entries(), school, name, text, given...)
}

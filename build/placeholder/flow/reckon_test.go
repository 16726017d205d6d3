package flow_test

import (
	"testing"

	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/placeholder/flow"
	"noonbook/build/result"
)

// entries are the placeholders that the tests evaluate.
func entries() []entry.Entry { return flow.Entries() }

// reckon evaluates a placeholder of the topic at the demo's school.
func reckon(t *testing.T, name string, given ...string) result.Result {
	t.Helper()
	return entrytest.Reckon(t, entries(), "alder reach", name, "2027-04-20", given...)
}

func fact(t *testing.T, r result.Result, name string) float64 {
	t.Helper()
	return entrytest.Fact(t, r, name).Number
}

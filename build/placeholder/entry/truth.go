package entry

import (
	"noonbook/build/result"
	"noonbook/build/say"
)

// Truth documents a fact that is yes or no, which lessons can ask for with only and
// unless.
func Truth(name, doc string) Fact { return Fact{Name: name, Doc: doc, Truth: true} }

// True is such a fact, printed as the word yes or no.
func True(name string, is bool) result.Fact {
	return result.Fact{Name: name, Value: say.Yes(is, "truth.yes", "truth.no")}
}

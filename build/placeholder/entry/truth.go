package entry

import "noonbook/build/say"

// Truth is a fact that is so or is not, as the blocks only and unless ask for it.
func Truth(so bool) say.Value { return say.Yes(so, "truth.yes", "truth.no") }

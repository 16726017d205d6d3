package plan

import (
	"sync"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/css"
	"github.com/tdewolff/minify/v2/js"

	"noonbook/build/typeset"
	"noonbook/theme"
)

// All schools have the same style sheet but for its end, and the same scripts: they are made
// small once.
var (
	smallStyle      = sync.OnceValue(func() []byte { return smaller(css.Minify, typeset.Style()) })
	smallScript     = sync.OnceValue(func() []byte { return smaller(js.Minify, theme.Script()) })
	smallRoomScript = sync.OnceValue(func() []byte { return smaller(js.Minify, theme.RoomScript()) })
)

func smaller(by minify.MinifierFunc, text []byte) []byte {
	const kind = "text" // either minifier is asked by itself
	m := minify.New()
	m.AddFunc(kind, by)
	small, err := m.Bytes(kind, text)
	if err != nil {
		panic(err) // the theme is embedded, and a test presses it
	}
	return small
}
